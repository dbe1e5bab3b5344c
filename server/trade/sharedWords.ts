const shared =
  /(?<!\p{L})(?:all|every|each|everywhere|globals?|generals?|defaults?|common|shared|inherited|alle[nrs]?|allgemein\p{L}*|gemeinsam\p{L}*|standard\p{L}*|vorgaben?|tou(?:s|tes)|communs?|communes?|(?:par )?d[\u00e9e]fauts?|g[\u00e9e]n[\u00e9e]ra(?:l|ux|les?)|glob(?:al(?:es?)?|ale|ali)|tutt[ie]|comun[ei]s?|comune|predefinit\p{L}*|general(?:es|i)?|tod[oa]s|por defecto|predetermin\p{L}*|padr(?:[\u00e3a]o|[\u00f5o]es)|gemeenschappelijk\p{L}*|algemeen|samtliga|alla|gemensam\p{L}*|f\u00e6lles|yhteis\p{L}*|kaikki|wszystki\p{L}+|wsp[\u00f3o]ln\p{L}+|v\u0161ech\p{L}*|spole\u010dn\p{L}+|все(?:х|м)?|общ\p{L}+|everything|partout|\u00fcberall|dappertutto|ovunque|overal|standaard\p{L}*|\u00f6verallt|overalt|v[\u00fdy]choz[\u00edi]|domy[\u015bs]ln\p{L}+|oletu(?:s|ks)\p{L}*|minden\p{L}*|k\u00f6z\u00f6s\p{L}*|alap\u00e9rtelmezett\p{L}*|\u00e1ltal\u00e1nos\p{L}*|t\u00fcm\p{L}*|genel\p{L}*|ortak\p{L}*|varsay\u0131lan\p{L}*|b\u00fct\u00fcn|(?:по )?умолчани\p{L}+|προεπιλ\p{L}+|κοιν\p{L}+)(?!\p{L})|共通|全て|すべて|全部|公共|所有|공통|모든|기본|既定|默认|默認/iu;
const longest = 60;

/** Whether a title or a name speaks of values that go for all zones: `defaults`, `zoneDefaults`, `[tutte le zone]`, `共通`. */
export function meansShared(text: string): boolean {
  return (
    text.length <= longest && shared.test(text.replaceAll('_', ' ').replace(/(\p{Ll})(\p{Lu})/gu, '$1 $2'))
  );
}
