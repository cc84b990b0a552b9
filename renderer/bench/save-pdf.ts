/** A paper that the shop made on demand, as a file in the downloads of this machine, from where it is printed. */
export function savePdf(name: string, base64: string): void {
  const bytes = Uint8Array.from(atob(base64), (sign) => sign.charCodeAt(0));
  const address = URL.createObjectURL(new Blob([bytes], { type: 'application/pdf' }));
  const link = document.createElement('a');
  link.href = address;
  link.download = name;
  link.click();
  // The browser has taken it by then.
  setTimeout(() => URL.revokeObjectURL(address), 60_000);
}
