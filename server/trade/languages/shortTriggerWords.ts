/** Short words for letting a key go and for what sounds before, which say so only where both stand in one column; without accents. */
const short = {
  release:
    /^(?:rel|rels|rls|rlse|relse|rlz|n(?:ote)?[\s/-]?off|loslass|losl|ausk|ausschw|relach|ril|rilasc|solt|suelt|lib|losg|loslat|slapp?|slipp?|zwol|pust|uvol|отп|отпуск)$/u,
  attack:
    /^(?:sus|sust|sustn|hld|att|attk|atk|atck|atq|attaq|ataq|ataque|attacco|attacca|n(?:ote)?[\s/-]?on|anschl|ansch|gedr|halt|geh|sout|ten|sost|ton|mant|prem|puls|press|prs|aansl|ansl|nac|stisk|наж|нажат|уд)$/u,
} as const;

/** Headings that leave open what their column tells apart, or speak of what starts zones. */
const openHeading =
  /^(?:types?|kinds?|sorts?|class|phase|parts?|events?|trig|trigger|starts?|note|midi|msg|message|typ|art|arten|ereignis|phase|ausloser|genre|sorte|evenement|declencheur|tipo|clase|fase|evento|disparo|innesco|soort|gebeurtenis|slag|hendelse|handelse|tyyppi|rodzaj|zdarzenie|druh|udalost|тип|вид|событие|类型|類型|種類|종류)$/u;

/** What a short word says of what starts a zone, beside one that says the other: `rel` beside `sus`. */
export function shortTrigger(word: string): 'attack' | 'release' | undefined {
  if (short.release.test(word)) return 'release';
  return short.attack.test(word) ? 'attack' : undefined;
}

/** Whether a word heads columns of any kinds, such as `Type`, or of what starts zones. */
export function isOpenHeading(word: string): boolean {
  return openHeading.test(word);
}
