/** What the file system's codes mean to whoever named the file. */
const causes: Record<string, string> = {
  ENOENT: 'no such file or folder; expected one that is there',
  EISDIR: 'a folder; expected a file',
  ENOTDIR: 'its folder is a file; expected a folder',
  EACCES: 'may not be opened; expected a file that you may read, or a folder that you may write to',
  EROFS: 'stands on something that cannot be written to; expected another folder',
  ENOSPC: 'the disk is full; expected room',
};

/** Which file, and why: the store's own word, or the file system's as one would say it. A file is written beside its place first; its own name is told. */
export function faultText(fault: NodeJS.ErrnoException): string {
  const cause = causes[fault.code ?? ''];
  if (cause === undefined || fault.path === undefined) return fault.message;
  return `${fault.path.replace(/\.[0-9a-f]{8}\.tmp$/, '')}: ${cause}`;
}
