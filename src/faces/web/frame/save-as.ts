/** Hands a file to the browser, as a download of this name. */
export function saveAs(blob: Blob, name: string): void {
  const address = URL.createObjectURL(blob);
  const link = document.createElement('a');
  link.href = address;
  link.download = name;
  link.click();
  // The browser takes the file up by itself; the address may go once it has.
  setTimeout(() => URL.revokeObjectURL(address), 60_000);
}
