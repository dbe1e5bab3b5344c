import { scoreDynamic } from './languages/scoreDynamics';
import { bareWord } from './languages/spelling';
import { nameKinds } from './names/nameParts';

/** Dynamics from soft to loud, as scores write them (common practice). */
export const dynamicLetters = ['pppp', 'ppp', 'pp', 'p', 'mp', 'mf', 'f', 'ff', 'fff', 'ffff'] as const;

const wordLabel = nameKinds.find(({ kind }) => kind === 'layers')?.labelOf;
/** Soft, medium and loud in the languages of the trade; those that file names have too are in `nameParts`. */
const loudness: Readonly<Record<'p' | 'mf' | 'f', string>> = {
  p: 'sachte schwach zart faible doucement débil bajo flojo debole piano leggero fraco baixo fraca zachtjes zwak svag svagt mjuk mjukt tyst lågt blød blødt svagt sakte stille hiljaa hiljainen pehmeä pehmeästi cicho cichy cicha słabo miękko tiše tichý slabě měkce тихо тихий слабо мягко 弱 弱い 弱く 小 弱音 轻 輕 약 약하게 여리게 작게',
  mf: 'mittelstark normal mittlere moyenne media médio média medio gemiddeld normaal middel medel mellan mellanstark mellem middels keski keskivoimakas keskiverto normaali średnio średni średnia umiarkowanie średně střední středně normálně средне средний средняя умеренно 中 中くらい 中間 普通 中等 중간 중 보통',
  f: 'firm firmly forceful forcefully strongly kräftig hard alto forti fuerte duro intenso alta forti forte luid sterk hart stark starkt hård hårt högt høj højt kraftig kraftigt hårdt sterkt kovaa kova voimakas voimakkaasti lujaa głośno głośny głośna mocno silnie hlasitě hlasitý silně silný громко громкий сильно сильный 強 強い 強く 大 强 强音 重 강 강하게 세게 크게',
};
const loudnessWords = new Map(
  (Object.entries(loudness) as ['p' | 'mf' | 'f', string][]).flatMap(([letter, words]) =>
    words.split(' ').map((word) => [bareWord(word), letter] as const),
  ),
);
/** Words that make soft softer and loud louder, and words that bring both to the middle. */
const more =
  /^(?:very|extra|sehr|tres|muy|molto|muito|zeer|erg|mycket|meget|veldig|hyvin|bardzo|velmi|очень)$/;
const less = /^(?:medium|med|mid|mezzo|mittel|half|halb|mi|medio|meio|halve?)$/;

/** The position among {@link dynamicLetters} of a text that is one of them, in any letter case; −1 for other text. */
export function dynamicOf(text: string): number {
  return (dynamicLetters as readonly string[]).indexOf(text.toLowerCase());
}

/** As {@link dynamicOf}, for words such as `fortissimo`, `soft`, `very loud` and `medium soft` too. */
export function dynamicIn(text: string): number {
  const letter = dynamicOf(scoreDynamic(text) ?? text);
  if (letter >= 0) return letter;
  const parts = text
    .trim()
    .toLowerCase()
    .split(/[\s_-]+/);
  const last = parts.at(-1) ?? '';
  const word = dynamicOf(wordLabel?.(last) ?? loudnessWords.get(bareWord(last)) ?? '');
  const [soft, loud] = [dynamicOf('p'), dynamicOf('f')];
  if (parts.length === 1 || word < 0) return parts.length === 1 ? word : -1;
  if (parts.length > 2) return -1;
  const plain = parts[0].normalize('NFKD').replace(/\p{M}/gu, '');
  if (more.test(plain) && (word === soft || word === loud)) return word === soft ? word - 1 : word + 1;
  return less.test(plain) && (word === soft || word === loud) ? dynamicOf(word === soft ? 'mp' : 'mf') : -1;
}
