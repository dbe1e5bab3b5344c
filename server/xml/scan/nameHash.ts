/** The hash of a stretch of text as `ParameterNames.idOfHash` expects it. */
export function nameHash(text: string, start: number, end: number): number {
  let hash = 0;
  for (let at = start; at < end; at++) hash = (Math.imul(hash, 31) + text.charCodeAt(at)) | 0;
  return hash;
}
