/** Words that call the value before them wrong, where a comma is behind them and none before: `57 no, 58`, not `57, no 58`. */
const wrong =
  'no|nope|wrong|nein|falsch|non|faux|errado|sbagliato|mal|n\u00e3o|nee|niet|fout|nej|nei|fel|forkert|feil|ei|v\u00e4\u00e4rin|nie|\u017ale|ne|\u0161patn\u011b|нет|неверно|hay\u0131r|yanl\u0131\u015f|nem|rossz|\u03cc\u03c7\u03b9|\u03bb\u03ac\u03b8\u03bf\u03c2';
const wrongToo = '違う|ちがう|いいえ|不对|不對|错|錯|아니|틀림';
/** Words that call the value behind them right. */
const right =
  'sorry|oops|rather|better|actually|should be|must be|i mean|make (?:it|that)|corrected to|sondern|vielmehr|besser|richtig|muss|soll|pardon|plut\u00f4t|corrig\u00e9 en|perd\u00f3n|mejor|digo|correcto|ali\u00e1s|melhor|correto|anzi|meglio|scusate|corretto|moet zijn|beter|juist|f\u00f6rl\u00e5t|snarare|ska vara|r\u00e4tt|snarere|skal v(?:\u00e6|\u00e5)re|rettet til|vaan|pikemminkin|oikein|raczej|powinno by\u0107|poprawnie|sp\u00ed\u0161e|spr\u00e1vn\u011b|m\u00e1 b\u00fdt|вернее|точнее|лучше|правильно|daha do\u011frusu|do\u011frusu|hanem|helyesen|ink\u00e1bb|\u03bc\u03ac\u03bb\u03bb\u03bf\u03bd|\u03c3\u03c9\u03c3\u03c4\u03cc';
const rightToo = 'いや|ではなく|じゃなくて|正しくは|訂正|应为|應為|应该是|改为|改為|아니고|아니라|정정';

const isWrong = String.raw`(?:\s+(?:${wrong})(?!\p{L})|\s*(?:${wrongToo}))\s*[,;:.!\u2013\u2014\u3001\uff0c]+\s*`;
const isRight = String.raw`\s*[,;:\u2013\u2014\u3001]?\s*(?:(?<!\p{L})(?:${right})(?!\p{L})|${rightToo})\s*[,;:\u3001]?\s*`;

/** What stands between a wrong value and the right one behind it: `57 no, 58`, `57, rather 58`, `57 nein, richtig 58`. */
export const spokenCorrection: RegExp = new RegExp(`(?:${isWrong})?${isRight}|${isWrong}`, 'iu');
