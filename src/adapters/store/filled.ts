import type { Compilable, CompiledQuery, Kysely } from 'kysely';
import type { Tables } from './tables.ts';

/** Where a value goes that is not known when the text is written. */
class Place {
  readonly index: number;
  constructor(index: number) {
    this.index = index;
  }
}

/**
 * A query that is put into words once for each database and filled in each time it is asked: wording it costs more than SQLite needs
 * to answer it.
 * @param write  the query; its values may go nowhere but into it, since they are not there yet
 */
export function filled<A extends readonly unknown[], R>(
  write: (db: Kysely<Tables>, ...values: A) => Compilable<R>,
): (db: Kysely<Tables>, ...values: A) => Compilable<R> {
  const worded = new WeakMap<Kysely<Tables>, CompiledQuery<R>>();
  return (db, ...values) => ({
    compile: () => {
      let query = worded.get(db);
      if (!query) {
        query = write(db, ...(values.map((_, index) => new Place(index)) as unknown as A)).compile();
        worded.set(db, query);
      }
      return {
        ...query,
        parameters: query.parameters.map((one) => (one instanceof Place ? values[one.index] : one)),
      };
    },
  });
}
