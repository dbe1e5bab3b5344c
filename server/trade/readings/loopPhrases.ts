import { loopWords } from '../loopWords';
import { turningWords } from '../turningWords';
import type { LoopReading } from './loopReading';

/** Loops that go on when the key is let go, too. */
const endless =
  /\b(?:forever|endless(?:ly)?|continuous(?:ly)?|infinite(?:ly)?|perpetual|always|never (?:stops|ends))\b|\b(?:through|during|into|after|even|past|in) (?:the |its )?(?:release|key[- ]?up|note[- ]?off|(?:key|note) (?:is |goes |comes )?(?:up|off|released|let go))|endlos|dauernd|st\u00e4ndig|immer weiter|(?:auch|noch) (?:im|beim|nach|w\u00e4hrend)\b.{0,20}(?:release|loslassen|ausklang)|\b(?:infinie?|sans fin|en permanence|continue?|toujours)\b|(?:m\u00eame|aussi) (?:pendant|apr\u00e8s).{0,15}rel[\u00e2a]ch|\b(?:sin fin|infinit[oa]|continu[oa]|siempre|tambi\u00e9n al soltar|senza fine|sempre|anche (?:nel|durante il|dopo il) rilascio|sem fim|cont\u00ednu[oa]|eindeloos|altijd|ook (?:bij|na) loslaten|o\u00e4ndlig\p{L}*|uendelig|loputon|bez ko\u0144ca|nekone\u010dn\p{L}+|ci\u0105g\u0142\p{L}+)\b|бесконеч|постоянн|無限|ずっと/iu;
/** Loops that play while the key is held, and end with the release. */
const held =
  /\b(?:while|as long as|whilst|until|till|up to|only (?:while|until))\b.{0,40}\b(?:key|note|finger|held|hold|down|release[ds]?|let go|key[- ]?up|note[- ]?off)|\b(?:held|sustain(?:ed|s)?(?: loop)?|hold)\b(?!.{0,20}forever)|\b(?:solange|bis|w\u00e4hrend)\b.{0,30}(?:taste|ton|note|loslassen|losgelassen|gehalten|gedr\u00fcckt)|gehalten|\b(?:tant que|jusqu['\u2019 ]?(?:au|\u00e0|\u00e0 ce que)|pendant que)\b.{0,30}(?:touche|note|rel[\u00e2a]ch|tenu|enfonc)|tenue?s?\b|\b(?:mientras|hasta)\b.{0,30}(?:tecla|nota|solt|suelt|manten|puls)|\b(?:finch\u00e9|fino (?:al|a)|mentre)\b.{0,30}(?:tast|nota|rilasci|premut|tenut)|\b(?:enquanto|at\u00e9)\b.{0,30}(?:tecla|nota|solt|press)|\b(?:zolang|tot|terwijl)\b.{0,30}(?:toets|noot|los|ingedrukt|vastgehouden)|\b(?:s\u00e5 l\u00e4nge|tills|s\u00e5 l\u00e6nge|indtil)\b|dopóki|do puszczenia|dokud|po dobu|пока|до отпускания|удерж|押して|離すまで/iu;
const none = new RegExp(
  String.raw`^(?:does|do|is|are)? ?n(?:o|ot|ever)\b|\bno(?:t| )(?: a)? ?loop|\bunlooped|${turningWords('without')}|\bkeine?\b|\bnicht\b|\bpas de\b|\bgeen\b|\bingen\b|\bžádn|\bei\b|нет|なし`,
  'iu',
);
const once =
  /\bone[- ]?shot|\bonce\b|to (?:its|the) (?:very )?end|\beinmal|\bune (?:seule )?fois|\buna (?:sola )?(?:vez|volta)|\buma (?:só )?vez|\beenmaal|\been keer|\ben gång|\ben gang|\bjednou\b|\braz\b|один раз|однократ|一度/iu;
const round =
  /ping[- ]?pong|back and forth|forwards? and back|there and back|hin und (?:her|zur\u00fcck)|vor und zur\u00fcck|aller[- ]retour|ida y vuelta|avanti e indietro|vai e vem|heen en weer|fram och tillbaka|туда и обратно/iu;
const loops = new RegExp(String.raw`${loopWords}|(?<!\p{L})ciclo|repeat|wiederhol|répèt|repit|ripet`, 'iu');

/** The mode of a loop that an explanation describes: `loops only while the key is down`; `undefined` where it speaks of something else. */
export function loopModeInWords(text: string): Pick<LoopReading, 'mode' | 'type'> | undefined {
  const is = (mode: LoopReading['mode'], type?: LoopReading['type']) => ({ mode, type });
  if (round.test(text)) return is('loop_continuous', 'alternate');
  if (endless.test(text)) return none.test(text.replace(endless, '')) ? undefined : is('loop_continuous');
  if (none.test(text) && (loops.test(text) || /^\S+(?: \S+)?$/u.test(text.trim()))) return is('no_loop');
  if (held.test(text)) return is('loop_sustain');
  if (once.test(text)) return is('one_shot');
  return loops.test(text) && !none.test(text) ? is('loop_continuous') : undefined;
}
