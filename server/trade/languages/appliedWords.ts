import { oneOfWords } from './wordPattern';

/** What stands behind the name of a value and says no more than that it is to be used, in the languages of the trade. */
const phrases: readonly string[] = [
  ...['to apply', 'to be applied', 'to use', 'to be used', 'to set', 'to be set', 'to add', 'to be added'],
  ...['anzuwenden', 'anwenden', 'zu verwenden', 'zu benutzen', 'einzustellen', 'einstellen', 'zu setzen'],
  ...['à appliquer', 'à utiliser', 'à régler', 'à ajouter'],
  ...['a aplicar', 'que aplicar', 'para aplicar', 'a usar', 'para usar'],
  ...['da applicare', 'da usare', 'da impostare'],
  ...['por aplicar', 'para utilizar', 'a utilizar'],
  ...['toe te passen', 'te gebruiken', 'in te stellen'],
  ...['att använda', 'att ställa in', 'som används', 'at bruge', 'å bruke', 'käytettävä'],
  ...['do zastosowania', 'do użycia', 'do ustawienia', 'k použití', 'použít'],
  ...['применить', 'для применения', 'к применению', 'застосувати'],
];
/** Where it is used. */
const places: readonly string[] = [
  ...[
    'in the player',
    'in the sampler',
    'in the instrument',
    'in player',
    'in sampler',
    'on playback',
    'for playback',
    'at playback',
  ],
  ...['im player', 'im sampler', 'im instrument', 'bei der wiedergabe', 'beim abspielen'],
  ...[
    'dans le lecteur',
    'dans l’échantillonneur',
    'à la lecture',
    'en el reproductor',
    'en el sampler',
    'nel lettore',
    'nel campionatore',
  ],
  ...[
    'no leitor',
    'no sampler',
    'in de speler',
    'in de sampler',
    'i spelaren',
    'i samplern',
    'w odtwarzaczu',
    'v přehrávači',
    'в плеере',
    'в семплере',
  ],
];
const behind = new RegExp(
  String.raw`[\s,;:(_-]+${oneOfWords([...phrases, ...places]).replaceAll(' ', '[ _-]')}(?:[\s).]*$|(?=\s+(?:in|en|em)\s\S+$|\s*[([]))`,
  'iu',
);
const mostRemarks = 3;

/** A heading without what only says that its values are to be used, and where: `tune in cents` of `tune in cents to apply in the player`. */
export function withoutApplied(heading: string): string {
  let text = heading;
  for (let count = 0; count < mostRemarks; count++) {
    const left = text.replace(behind, '');
    if (left === text || left.trim() === '') break;
    text = left;
  }
  return text;
}
