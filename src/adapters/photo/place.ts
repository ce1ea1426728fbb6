import type { PhotoStore } from '../../shop/print/photo-store.ts';
import { isDatabaseUrl } from '../store/database-url.ts';
import { photoFolder } from './folder.ts';
import { photoTable } from './table.ts';

/** Photos where they are kept, told in one line, so that threads can be told too: a folder, or the workshop's database. */
export const photosAt = (place: string): PhotoStore =>
  isDatabaseUrl(place) ? photoTable(place) : photoFolder(place);
