/** Whether bytes are text as some programs save it under the name “Unicode”: with its mark, or by its first sign. */
export function isUtf16(bytes: Uint8Array): boolean {
  const [first, second] = bytes;
  if ((first === 0xff && second === 0xfe) || (first === 0xfe && second === 0xff)) return true;
  return bytes.length > 3 && (first === 0) !== (second === 0);
}
