/**
 * A plate as it is looked for: capitals, letters and figures only, and what looks alike is alike (O as 0, I as 1),
 * since plates are typed from a wet car or a phone. Never shown: the plate itself is kept as typed.
 */
export function foldPlate(plate: string): string {
  return plate
    .normalize('NFKC')
    .toUpperCase()
    .replace(/[^\p{L}\p{N}]/gu, '')
    .replaceAll('O', '0')
    .replaceAll('I', '1');
}
