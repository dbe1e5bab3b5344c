import { bareWord, wordsOf } from '../languages/spelling';

/** Headings of lists of files in the languages of the trade, without accents: how large and how long files are, what is in them. */
const ofForm =
  /^(?:(?:file|datei|bestands|fil|taille du|tamano del|dimensione)? ?(?:size|gro(?:ß|ss)e|grosse|taille|tamano|dimension[ei]|grootte|tamanho|storlek|storrelse|koko|rozmiar|velikost|размер|объем|μεγεθος|boyut|meret)(?: (?:du|del|do|dos|des|di) (?:fichier|archivo|file|arquivo)s?)?|(?:bytes?|kb|mb|gb|kib|mib)|(?:play(?:ing)? |running |total )?(?:length|duration|time)|seconds?|minutes?|dauer|spieldauer|laufzeit|lange|sekunden|minuten|duree|longueur|secondes|duracion|longitud|segundos|durata|lunghezza|secondi|duur|lengte|speelduur|duracao|comprimento|langd|varaktighet|speltid|laengde|lengde|varighed|varighet|kesto|pituus|dlugosc|czas trwania|delka|trvani|длительность|продолжительность|длина|διαρκεια|sure|uzunluk|hossz|idotartam|bits?|bit ?(?:depth|rate)|bittiefe|channels?|kanale|canaux|canales|canali|kanalen|canais|kanaler|kanavat|kanaly|kanal|каналы|format|codec|lufs|(?:true )?peak|rms|snr|lra|plr|psr|crest(?: factor)?|noise floor|md5|sha ?\d*|checksum)$/u;
/** When and by whom they were made, and who may use them. */
const ofOrigin =
  /^(?:date|recorded(?: on)?|recording date|date recorded|modified|created|changed|year|datum|aufnahmedatum|aufgenommen(?: am)?|geandert|jahr|date d enregistrement|enregistre(?: le)?|annee|fecha|fecha de grabacion|grabado|ano|data|data di registrazione|registrato|anno|opnamedatum|jaar|data de gravacao|gravado|dato|inspelad|inspelningsdatum|ar|paivays|paivamaara|data nagrania|rok|datum nahravky|дата|дата записи|год|ημερομηνια|tarih|licen[cs]es?|rights|lizenz|rechte|licencia|licenza|licentie|licenca|licens|lisens|lisenssi|licencja|лицензия|lisans|author|artist|recordist|recorded by|autor|auteur|autore|album|genre)$/u;
const unspaced =
  /^(?:(?:ファイル)?サイズ|容量|長さ|時間|再生時間|録音日時?|日付|チャンネル数?|ビット(?:数|深度)|ライセンス|(?:文件)?大小|时长|時長|长度|長度|日期|录音日期|声道数?|位深|许可|(?:파일 ?)?크기|길이|재생 ?시간|날짜|녹음일|채널|라이선스)$/u;
/** Units behind a name, with brackets around them or without. */
const units = /(?: (?:[kmg]i?b|[kmg]o|bytes?|ko|mo|go|кб|мб|гб|s|sec|secs|sek|seconds?|min|ms|dbfs|db))+$/u;

/**
 * Whether a heading is of what files are as files: their size, length, bits and channels, when and by whom they were made. Such columns
 * give no keys or velocities.
 */
export function tellsOfFile(heading: string): boolean {
  const asWritten = heading
    .normalize('NFKC')
    .replace(/[([{].*$/u, ' ')
    .trim();
  const bare = wordsOf(heading.replace(/[([{（].*$/u, ' '))
    .map(bareWord)
    .join(' ');
  const name = bare.replace(units, '');
  return ofForm.test(bare) || ofForm.test(name) || ofOrigin.test(name) || unspaced.test(asWritten);
}
