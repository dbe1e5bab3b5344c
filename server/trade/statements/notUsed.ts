import { usualSigns } from '../languages/spelling';

// Words from memory.
const phrases = [
  "not (?:in )?used?|not in use|(?:do not|don['’]t) use|unused|(?:not|never) (?:played|heard|loaded)|no longer (?:used|played)",
  String.raw`kept (?:\p{L}+ )?(?:for|as) (?:comparison|reference|the record|a backup)|for comparison only|rejected|obsolete`,
  'nicht (?:benutzt|verwendet|gespielt|geladen|in gebrauch)|unbenutzt|nur zum vergleich|verworfen',
  String.raw`pas utilis\p{L}*|inutilis\p{L}*|non utilis\p{L}*|pour comparaison`,
  String.raw`no (?:se )?(?:usa|utiliza|toca)\p{L}*|sin usar|descartad\p{L}*|para comparar`,
  String.raw`non (?:usat|utilizzat|suonat)\p{L}*|non in uso|inutilizzat\p{L}*|scartat\p{L}*|solo (?:per|come) confronto`,
  String.raw`n[aã]o (?:é |se )?(?:usa|utiliza|toca)\p{L}*`,
  'niet (?:gebruikt|gespeeld|in gebruik)|ongebruikt|ter vergelijking',
  String.raw`anv[aä]nds (?:inte|ej)|ej i bruk|oanv[aä]nd\p{L}*|(?:bruges|brukes) (?:ikke|ej)|ikke i (?:brug|bruk)|ubrugt\p{L}*`,
  'ei (?:ole )?k[aä]yt[oö]ss[aä]|ei k[aä]ytet[aä]',
  String.raw`nieu[zż]ywan\p{L}*|nie (?:jest )?u[zż]ywan\p{L}*|nepou[zž]it\p{L}*|nepou[zž][ií]v[aá]\p{L}*(?: se)?`,
  String.raw`не использу\p{L}*|не использовать|не играет|не в ходу|для сравнения|не (?:исползва се|се използва)|не використову\p{L}*`,
  String.raw`kullan[ıi]lm[ıi]yor|kullan[ıi]lmayan|kullan[ıi]lmaz|nem haszn[aá]l\p{L}*|nincs haszn[aá]latban|δεν χρησιμοποι\p{L}*|no s['’](?:usa|utilitza)`,
].join('|');
const inSigns = '不使用|未使用|不用|使用しない|使わない|사용하지 ?않\\p{L}*|사용 ?안 ?함|미사용';
/** What a remark says of its row alone; within a sentence there may be bounds to it. */
const silent = [
  "(?:does|do)(?: not|n['’]t) (?:play|sound)|stays? silent",
  'spielt (?:nicht|nie)(?: mit)?|spielen nicht|klingt nicht|bleibt stumm',
  'ne (?:joue|sonne|jouent|sonnent) pas|no (?:suenan?|tocan?)|non (?:suona|suonano)|n[aã]o (?:soa|soam|tocam?)|no (?:sona|sonen)',
  'speelt niet|klinkt niet|spelar inte|l[aå]ter inte|sp(?:iller|iler) ikke|ei soi',
  'nie (?:gra|graj[aą]|brzmi)|nehraj[eí]|nezn[ií]|не (?:звучит|играет|звучи|свири|грає)|[cç]almaz|[cç]almıyor|nem sz[oó]l|δεν (?:παίζει|ακούγεται)|nu c[aâ]nt[aă]',
].join('|');
const silentInSigns = '鳴らない|鳴らさない|不发声|不發聲|不播放|소리 ?안 ?남';
const before =
  'is |are |was |were |currently |do |wird |werden |derzeit |zurzeit |ist |sind |est |es |son |è |é |jest |är |er ';

const said = new RegExp(String.raw`(?<!\p{L})(?:${phrases})(?!\p{L})|${inSigns}`, 'iu');
const allOfClause = new RegExp(
  `^(?:${before}){0,2}(?:${phrases}|${silent})$|^(?:${inSigns}|${silentInSigns})$`,
  'iu',
);

/** Where a text says that something in a list or a file is kept there and does not play, with the words that say so; `null` where it does not. */
export function notUsedIn(text: string): RegExpExecArray | null {
  return said.exec(text);
}

/** Whether a remark says that its row is not used: in a clause of its own, with nothing that bounds it. */
export function saysNotUsed(remark: string): boolean {
  return usualSigns(remark)
    .split(/[,;:.()!、，。–—]|\s-\s/u)
    .some((clause) => allOfClause.test(clause.trim()));
}
