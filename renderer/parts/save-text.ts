/** Hands a text to the person as a file to keep, in UTF-8 with the mark that table programs look for. */
export function saveText(name: string, text: string): void {
  const address = URL.createObjectURL(new Blob([`\uFEFF${text}`], { type: 'text/csv;charset=utf-8' }));
  const link = document.createElement('a');
  link.href = address;
  link.download = name;
  link.click();
  URL.revokeObjectURL(address);
}
