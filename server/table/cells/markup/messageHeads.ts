/** So much of a text tells whether it is a conversation, and so many of its lines have to start with a head (our choice). */
const looked = 1 << 16;
const fewest = 3;
const mostBare = 0.4;
const clock = String.raw`\d{1,2}[:.]\d{2}(?:[:.]\d{2})?(?:[ ]?[ap]\.?m\.?)?`;
const day = String.raw`\d{1,4}[-./]\d{1,2}(?:[-./]\d{1,4})?`;
const stamp = `(?:${day},?[ T])?${clock}(?:,?[ ]${day})?`;
const person = String.raw`[\p{L}\p{N}_.@~+-]{1,30}(?:[ ][\p{L}\p{N}_.-]{1,30})?`;
/** When somebody wrote, and who: `[19:02] ann:`, `19:02 <ann>`, `21.03.26, 19:02 - ann:`, `ann (19:02):`. */
const forms = [
  String.raw`\[${stamp}\][ ]?(?:<${person}>|${person}[ ]?:)`,
  `${stamp}[ ]?(?:-[ ])?(?:<${person}>|${person}[ ]?:)`,
  String.raw`(?:<${person}>|${person})[ ]?[[(]${stamp}[\])]:?`,
].map((form) => new RegExp(String.raw`^[ \t]*${form}[ \t]?`, 'gimu'));

/**
 * The text of a conversation without the time and the name before each message. What is taken away becomes blanks, so that all offsets
 * stay. Any other text stays as it is.
 */
export function withoutMessageHeads(text: string): string {
  const start = text.slice(0, looked);
  if (!/\d[:.]\d\d/.test(start)) return text;
  const lines = start.split(/\r?\n/).filter((line) => line.trim() !== '');
  const form = forms.find((one) => {
    const count = start.match(one)?.length ?? 0;
    return count >= fewest && lines.length - count <= lines.length * mostBare;
  });
  return form ? text.replace(form, (head) => ' '.repeat(head.length)) : text;
}
