/** What a plan says in place of a name that nobody knows yet; more words may follow, as in `to be recorded in May`. */
const phrases: readonly string[] = [
  ...['tb[acdr]', String.raw`t\.b\.[acdr]\.?`],
  'to be (?:re-?)?(?:recorded|done|added|named|made|defined|determined|decided|confirmed|announced|delivered|supplied|sampled|chosen)',
  'not(?: yet)?(?: been)? (?:recorded|sampled|available|delivered)',
  '(?:still|yet) to (?:come|do|record|follow|be .{2,20})',
  '(?:wird|werden|muss|müssen)(?: noch)? .{0,20}?(?:aufgenommen|nachgereicht|geliefert)',
  'noch (?:aufzunehmen|offen|zu .{2,20}|nicht .{2,20})',
  '(?:reste )?à (?:enregistrer|venir|faire|définir|compléter)',
  'pas encore .{2,20}',
  '(?:por|a) (?:grabar|definir|hacer)',
  '(?:aún|todavía) (?:no|sin) .{2,20}',
  'da (?:registrare|definire|fare)',
  'non ancora .{2,20}',
  'a (?:gravar|definir|fazer)',
  'ainda (?:não|por) .{2,20}',
  '(?:per|pendent de) (?:gravar|enregistrar)',
  '(?:nog )?op te nemen',
  'nog (?:niet|te) .{2,20}',
  '(?:ska|skall|skal) (?:spelas in|indspilles|optages)',
  '(?:inte|ikke) .{0,12}?(?:inspelad|inspelat|indspillet|optaget)(?: ännu| endnu)?',
  'ei vielä .{2,20}',
  '(?:vielä )?äänitettävä',
  'do (?:nagrania|ustalenia)',
  'jeszcze nie .{2,20}',
  '(?:bude|k) (?:nahráno|nahrání)',
  '(?:ещё|еще|пока) не .{2,20}',
  '(?:будет записан\\p{L}*|записать)',
  '(?:henüz .{2,20}|kaydedilecek)',
  '(?:még nincs .{2,20}|felveendő)',
  '(?:δεν έχει .{2,20}|προς ηχογράφηση)',
];
/** The same in words that are the whole text: with others they may be a name. */
const alone: readonly string[] = [
  'to ?do',
  'to (?:come|follow|record)',
  '(?:not|none) yet',
  'pending',
  'planned',
  'missing',
  'coming(?: soon)?',
  'placeholder',
  'wip',
  '(?:folgt|fehlt)(?: noch)?',
  '(?:ausstehend|geplant|platzhalter)',
  '(?:en attente|manquant|prévu)',
  '(?:pendiente|pendente|falta|previsto|prevista|in attesa|manca)',
  '(?:volgt(?: nog)?|ontbreekt|gepland)',
  '(?:kommer|saknas|planerad|mangler|planlagt)',
  '(?:puuttuu|tulossa)',
  '(?:brak|w planie|chybí|plánováno)',
  '(?:нет|позже)',
  '(?:eksik|hiányzik)',
  '(?:未録音|録音予定|録音待ち|未定|未收录|未录制|待录制?|待定|미정|녹음 ?예정)',
  // Signs alone.
  String.raw`[?\uff1f\u2026]+|\.{3,}`,
];
const longest = 80;
const inBrackets = /^(?:\(.*\)|\[.*\]|<.*>|\{.*\}|（.*）|【.*】)$/u;
const signs = String.raw`\s"'“”„«»()[\]<>{}（）【】*_~:,;-`;
const edges = new RegExp(`^[${signs}]+|[${signs}]+$`, 'gu');
const toCome = new RegExp(
  String.raw`^(?:(?:${phrases.join('|')})(?:[ .!?,;:(/\u2013-].*)?|(?:${alone.join('|')})[.!]?)$`,
  'iu',
);

/** Whether a text in place of a name says that what it would name is still to come, as `TBD` and `(to be recorded)` do. */
export function isStillToCome(text: string): boolean {
  if (text.length > longest) return false;
  return toCome.test(text.replace(edges, '').replace(/\s+/gu, ' ').normalize('NFC'));
}

/** Whether a text stands in brackets as a whole, as what is said in place of a name does. */
export function standsInBrackets(text: string): boolean {
  return text.length <= longest && inBrackets.test(text.trim());
}
