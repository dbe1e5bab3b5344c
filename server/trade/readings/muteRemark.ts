import { readHeading } from '../headings/headings';

const remark = /^[([{]?\s*(\p{L}[\p{L} -]{1,30}?)\s*[#:=.-]?\s*(?:\d{1,2}|[A-Za-z])\s*[)\]}]?$/u;

/** Whether a text puts a zone into a group of those that silence one another: `(choke 1)`, `Stummgruppe A`. */
export function isMuteRemark(text: string): boolean {
  const words = text.length > 50 ? undefined : remark.exec(text)?.[1];
  const meaning = words === undefined ? undefined : readHeading(words)?.meaning;
  return meaning === 'mute_group' || meaning === 'mutes';
}
