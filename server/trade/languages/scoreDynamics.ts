/** The words of scores for dynamics, in full and as other scripts write them, by the letters that stand for them; without accents. */
const words: Readonly<Record<string, string>> = {
  ppp: 'pianississimo pianissississimo',
  pp: 'pianissimo pianisimo pianissimi пианиссимо піанісімо ピアニッシモ ピアニシモ 피아니시모 最弱 πιανισιμο',
  p: 'пиано піано ピアノ 피아노 πιανο',
  mp: 'mezzopiano metsopiano mezopiano меццопиано меццопіано メゾピアノ メッゾピアノ 메조피아노 中弱 μετζοπιανο',
  mf: 'mezzoforte metsoforte mezoforte меццофорте メゾフォルテ メッゾフォルテ 메조포르테 中强 中強 μετζοφορτε',
  f: 'форте フォルテ 포르테 φορτε',
  ff: 'fortissimo fortisimo fortissimi фортиссимо фортісімо フォルティッシモ フォルテッシモ 포르티시모 最强 最強 φορτισιμο',
  fff: 'fortississimo',
};
const letters = new Map(
  Object.entries(words).flatMap(([letter, some]) =>
    some.split(' ').map((word) => [plain(word), letter] as const),
  ),
);

/** The letters of a dynamic that a score writes in full, in one word or two: `mf` for `mezzoforte` and `mezzo-forte`. */
export function scoreDynamic(text: string): string | undefined {
  return text.length > 30 ? undefined : letters.get(plain(text));
}

function plain(text: string): string {
  return text
    .normalize('NFKD')
    .replace(/[\p{M}\s._-]+/gu, '')
    .toLowerCase();
}
