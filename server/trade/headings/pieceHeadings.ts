import { wordsOf } from '../languages/spelling';

/** Headings of lists of music in the languages of the trade, without accents: how fast a piece goes and how it counts. */
const pace =
  /^(?:tempo|tempi|bpm|metronom\p{L}*|schlage|time signature|taktart|takt|takte|bars|beats|mesures?|compas|compases|battute|compassos?|maat|maten|tahtilaji|tahdit|metrum|такт|размер|темп|ритм|ταχυτητα ρυθμου|ρυθμος|utem|olcu|拍子|テンポ|速度|节拍|節拍|박자|템포)$/u;
/** What a piece is called, and who wrote it. */
const title =
  /^(?:songs?|titles?|pieces?|hymns?|works?|composers?|artists?|lied(?:er)?|titel|stuck|stucke|werk|komponist\p{L}*|chansons?|chants?|titres?|morceaux?|œuvre|compositeur|cancion(?:es)?|titulo|pieza|obra|compositor|canzon[ei]|canto|titolo|brano|compositore|musica|cancao|peca|stuk|componist|sang|sanger|lat|latar|stycke|stykke|laulu|kappale|saveltaja|piesn|piosenka|tytul|utwor|kompozytor|pisen|skladba|skladatel|песня|название|произведение|композитор|τραγουδι|τιτλος|συνθετης|dal|cim|szerzo|sarki|parca|eser|besteci|曲|曲名|曲目|歌|歌曲|作曲者?|노래|곡|곡명|제목)$/u;

/** What a heading says of pieces of music: their pace, or their name; `undefined` for other headings. */
export function pieceHeading(heading: string): 'pace' | 'title' | undefined {
  const bare = wordsOf(heading.replace(/[([{（].*$/u, ' '));
  const texts = [bare.join(' '), bare.at(0) ?? ''];
  const asWritten = heading.normalize('NFKC').trim();
  if ([...texts, asWritten].some((text) => pace.test(text))) return 'pace';
  return [bare.join(' '), asWritten].some((text) => title.test(text)) ? 'title' : undefined;
}
