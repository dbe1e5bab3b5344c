import { bareWord } from './spelling';

/** What somebody writes of a sample whose tuning needs no change, without accents (common words). */
const inTune =
  /^(?:(?:is |it s |already |schon |deja |ya |gia |ja )?(?:ok|okay|fine|good|in tune|true|correct|right|perfect|as is|unchanged|no change|none needed|gut|stimmt|passt|richtig|rein|sauber|in ordnung|unverandert|gestimmt|bon|bien|juste|correcte?|accorde|inchange|rien|correcto|afinad[oa]|sin cambios?|nada|buon[oa]|bene|va bene|intonat[oa]|giust[oa]|accordat[oa]|bom|bem|cert[oa]|corret[oa]|goed|zuiver|klopt|gestemd|bra|ratt|stammer|ren|fint|stemt|god|rigtig|riktig|hyva|vireessa|kunnossa|dobrze|czyst[aeoy]|nastrojon[aeoy]|dobre|ladi|naladeno|jo|rendben|tiszta|iyi|tamam|bun|acordat|tocno|dobro|ок|окей|норма|хорошо|чисто|строит|верно|добре|καλο|ενταξει|σωστο)|\u2713|\u2714|\u221a|\u826f|\u826f\u3044|\u6b63\u5e38|\u6b63\u786e|\u51c6|\uc815\uc0c1|\uc88b\uc74c)[.!]?$/u;

/** Whether a cell of a tuning says that it is right as it is: `ok`, `in tune`, `stimmt`, `✓`. */
export function meansInTune(text: string): boolean {
  return text.length <= 24 && inTune.test(bareWord(text));
}
