import type { Entry } from './entry.ts';
import { surveyKey } from './survey-record.ts';

/** Entries about one thing, written on different phones without knowing of each other; the last of them counts until a person strikes one. */
export interface Conflict {
  /** What they are about; the same for as long as it is not settled. */
  readonly about: string;
  /** In order of seq, at least two. */
  readonly entries: readonly Entry[];
}

/** What an entry says something of, where a later entry about the same takes its place. */
function about(entry: Entry): readonly string[] {
  switch (entry.kind) {
    case 'sweep taken':
    case 'level read':
    case 'height read':
    case 'bar read':
      return [`reading/${entry.round}/${entry.setup}/${entry.repeat ?? 0}`];
    case 'print read':
      return Object.keys(entry.share).map((pad) => `print/${entry.round}/${pad}`);
    case 'print photographed':
      return [`print/${entry.round}/${entry.pad}`];
    case 'part turned over':
    case 'round closed':
    case 'stop signed':
      return [`${entry.kind}/${entry.round}`];
    case 'pass made':
      return [`pass/${entry.round}/${entry.pass}`];
    case 'cause settled':
      return [`cause/${entry.round}/${entry.cause}`];
    case 'survey taken':
      return [`survey/${surveyKey(entry)}`];
    case 'result taken':
      return [`result/${entry.test}/${entry.when}`];
    case 'axis taken':
      return [`axis/${entry.of}`];
    case 'step told':
      return [`step/${entry.step}/${entry.what}`];
    case 'plan amended':
    case 'machine set':
    case 'heights set':
    case 'chart set':
      return [entry.kind];
    default:
      return [];
  }
}

/**
 * What two hands wrote about the same thing without knowing of each other, and nobody settled yet: neither was struck, and nobody who
 * knew of both wrote about it again. An entry that does not say where it was written is taken to have known all before it.
 *
 * @param live  the job's entries that count, in order
 */
export function conflicts(live: readonly Entry[]): Conflict[] {
  const groups = new Map<string, Entry[]>();
  for (const entry of live)
    for (const key of about(entry)) groups.set(key, [...(groups.get(key) ?? []), entry]);
  return [...groups].flatMap(([key, entries]) => {
    const last = entries.at(-1)!;
    const { written } = last;
    if (!written) return [];
    const unseen = entries.filter(
      (one) => one !== last && one.seq > written.knowing && one.written?.on !== written.on,
    );
    // Of each phone its last word counts.
    const lastOfEach = unseen.filter(
      (one, k) => !unseen.slice(k + 1).some((later) => later.written?.on === one.written?.on),
    );
    return lastOfEach.length === 0 ? [] : [{ about: key, entries: [...lastOfEach, last] }];
  });
}
