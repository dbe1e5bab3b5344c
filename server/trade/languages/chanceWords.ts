/** Words for how likely one of several alternatives is (English and from memory), without accents. */
export const chanceWords: ReadonlySet<string> = new Set(
  'chance chances probability prob likelihood odds luck wahrscheinlichkeit wsk zufall probabilite hasard probabilidad azar probabilita probabilidade kans waarschijnlijkheid sannolikhet chans sandsynlighed sannsynlighet todennakoisyys prawdopodobienstwo szansa pravdepodobnost sance olasilik sans eselye valoszinuseg вероятность 概率 機率 確率 확률'.split(
    ' ',
  ),
);
