import type { PhotoStore } from '../../shop/print/photo-store.ts';
import { photoFolder } from './folder.ts';
import { photoTable } from './table.ts';

/** Whether a place for a workshop or its photos is a PostgreSQL database, as DATABASE_URL has it. */
export const isDatabaseUrl = (place: string): boolean => /^postgres(ql)?:\/\//.test(place);

/** Photos where they are kept, told in one line, so that threads can be told too: a folder, or the workshop's database. */
export const photosAt = (place: string): PhotoStore =>
  isDatabaseUrl(place) ? photoTable(place) : photoFolder(place);
