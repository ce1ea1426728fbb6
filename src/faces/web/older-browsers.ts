import { arrayMethods, hasOwn, type Methods } from './older-methods.ts';

/**
 * Gives a browser of 2021 what it lacks of the language the page is written in: a shop's old phone has one. The build lowers the
 * syntax (vite.config.ts); these are the methods. Imported first by the page and by its threads.
 */
function give(holder: object, methods: Methods): void {
  for (const [name, value] of Object.entries(methods))
    if (!(name in holder)) Object.defineProperty(holder, name, { value, writable: true, configurable: true });
}

give(Array.prototype, arrayMethods);
const { at, findLast, findLastIndex } = arrayMethods;
give(Object.getPrototypeOf(Int8Array.prototype), { at, findLast, findLastIndex });
give(String.prototype, { at });
give(Object, { hasOwn });
