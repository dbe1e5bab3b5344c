/** Format tags of the `fmt ` chunk (RFC 2361, WAVE and AVI codec registries). */
export const formatTag = { pcm: 1, float: 3, alaw: 6, mulaw: 7, extensible: 0xfffe } as const;

const names: ReadonlyMap<number, string> = new Map([
  [formatTag.pcm, 'pcm'],
  [2, 'ms-adpcm'],
  [formatTag.float, 'float'],
  [formatTag.alaw, 'alaw'],
  [formatTag.mulaw, 'mulaw'],
  [0x11, 'ima-adpcm'],
  [0x31, 'gsm610'],
  [0x50, 'mpeg'],
  [0x55, 'mpeg-layer-3'],
]);

/** The name of a format tag; `tag-0x0123` for one without a name here. */
export function encodingOfTag(tag: number): string {
  return names.get(tag) ?? `tag-0x${tag.toString(16).padStart(4, '0')}`;
}

/** Whether every frame takes the same number of bytes, so that the number of frames follows from the size of the data. */
export function hasFixedFrames(encoding: string): boolean {
  return encoding === 'pcm' || encoding === 'float' || encoding === 'alaw' || encoding === 'mulaw';
}
