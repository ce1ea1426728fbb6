import type { PhotoStore } from '../../shop/print/photo-store.ts';
import type { Store } from '../../shop/store.ts';
import { photoFolder } from '../photo/folder.ts';
import { photoTable } from '../photo/table.ts';
import { openPostgres } from '../store/postgres.ts';
import { openSqlite } from '../store/sqlite.ts';
import type { WorkshopPlace } from './place.ts';

export interface OpenWorkshop {
  readonly place: WorkshopPlace;
  readonly store: Store;
  readonly photos: PhotoStore;
  readonly close: () => Promise<void>;
}

/** @throws Fault  as openSqlite and openPostgres */
export async function openWorkshop(place: WorkshopPlace): Promise<OpenWorkshop> {
  if (place.kind === 'SQLite') {
    const store = await openSqlite(place.at);
    return { place, store, photos: photoFolder(place.photos), close: store.close };
  }
  const store = await openPostgres(place.at);
  const photos = photoTable(place.at);
  return {
    place,
    store,
    photos,
    close: async () => {
      await photos.close();
      await store.close();
    },
  };
}
