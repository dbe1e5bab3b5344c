import { bareWord } from '../languages/spelling';

/** Stems of words for how fast a sample plays, in the languages of the trade and without accents. */
const speed =
  /(?<!\p{L})(?:speed|(?:play(?:ing|back)?|pitch) ?rate|(?:abspiel|wiedergabe)(?:tempo|rate)|\p{L}*geschwindigkeit|vitesse|velocidade? de|velocita di|(?:fact?tor|fator|fattore|rapporto|relacion) (?:de|di|da) (?:velocidade?|velocita)|(?:afspeel)?snelheid|(?:uppspelnings|avspillings|afspilnings)?(?:hastighet|hastighed)|(?:toisto)?nopeu|predkosc|szybkosc|rychlost|brzin|sebesseg|viteza|hiz|скорост|швидк|ταχυτ)|速度|スピード|再生レート|속도/u;
/** Words for pitch, and for the ratio of two of them. */
const pitch =
  /(?<!\p{L})(?:pitch|tun(?:e|ing)(?!\p{L})|freq|frek|tonhoh|stimm|hauteur|justesse|accord|afina|altura|tono|intonaz|toonhoogte|stemming|tonhojd|stamning|vire|wysokos|stroj|vysk|лад|строй|высот|тон)|音高|ピッチ|음정/u;
const ratio =
  /ratio|fa[ck]t[eo]r|facteur|fattore|fator|verhaltnis|rapport|razon|relacion|relacao|razao|verhouding|forhallande|forhold|kerroin|suhde|stosunek|wspolczynnik|pomer|multiplier|коэфф|множит|отнош|коеф|(?<!\p{L})x(?!\p{L})|比|係数|倍|비율|배율/u;
/** What else has a speed, or had one when it was recorded. */
const ofOthers =
  /(?<!\p{L})(?:lfo|vib|trem|chorus|env|attack|decay|release|fade|tape|band|bandmaschin|record|recor?d|aufnahme|enregistr|grabac|registraz|gravac|opname|inspeln|optag|nagran|nahrav|запис|measur|gemess|mesur|motor|rotor|leslie|roll|wind|strum|arp|bow|bogen|archet|arco)|録音/u;

/** Whether a heading speaks of how fast a sample is to play, or of a ratio of pitches: `playback speed`, `Abspielrate`, `pitch factor`. */
export function isSpeedHeading(heading: string): boolean {
  const words = bareWord(heading).replace(/[_-]/gu, ' ');
  if (ofOthers.test(words)) return false;
  return words === 'rate' || speed.test(words) || (pitch.test(words) && ratio.test(words));
}
