/** Stems for an attenuation, without accents (common words of audio). */
export const attenuationStems: RegExp =
  /(?<!\p{L})(?:attenuat|attenuaz|attenuare|atenua|dampfung|daempfung|abschwachung|absenkung|affaibliss|demping|verzwakking|dampning|dæmpning|vaimennu|tlumieni|utlum|zeslabeni|prigusenj|slabljenj|ослаблени|затухани|послабленн|загасанн|затихван|csillapitas|halkitas|zayiflatma|εξασθενησ|εξασθενισ)|減衰|衰减|衰減|감쇠/u;
/** dB that count from a louder level: `dB below full scale`, `dB under the loudest`, `dB quieter than`. */
export const belowFullLevel: RegExp =
  /(?<!\p{L})(?:db|decibels?|dezibel|decibel\p{L}*|дб)\s+(?:are )?(?:(?:\p{L}+ ){0,2}(?:below|under|beneath|down|off|softer|quieter|lower|less|unter|unterhalb|leiser|sous|en dessous|au-dessous|por debajo|debajo|sotto|abaixo|onder|under|pod|ponizej|alle|ниже|тише)|(?:mas|plus|piu|mais) (?:baj|bas|pian|baix|faibl|dou[cx]|suav|debol|frac)\p{L}*|zachter|ciszej|tise|lagre|svagare|hiljaise\p{L}*|pienem\p{L}*|halkabb\p{L}*)(?!\p{L})/u;
/** Numbers above 0 that are said to be quieter. */
export const positiveNumbers: RegExp =
  /(?<!\p{L})(?:positiv\p{L}*|plus values|\+|dodatni\p{L}*|kladn\p{L}*|положительн\p{L}*)(?!\p{L})/u;
/** Greater numbers that are said to be quieter. */
export const greaterNumbers: RegExp =
  /(?<!\p{L})(?:(?:higher|greater|larger|bigger|more) (?:numbers?|values?|figures?|db|level|is|means|=)|(?:hohere|grossere|größere) (?:zahlen|werte|zahl)|(?:plus (?:grand|eleve)|valeurs? (?:plus )?(?:grande|elevee))\p{L}*|(?:numeros?|valores?) (?:mas|mais) (?:alto|grande|maiore)\p{L}*|(?:numeri|valori) (?:piu )?(?:alti|grandi|maggiori)|hogere (?:getallen|waarden)|hogre (?:tal|varden))(?!\p{L})/u;
/** Minus signs that were left out. */
export const withoutMinus: RegExp =
  /(?<!\p{L})(?:(?:minus(?:es)?|negative)(?: signs?)?(?: (?:is|are|was|were|has been|have been|being))? (?:left out|left off|omitted|dropped|missing|not (?:written|shown|typed)|implied|understood|lost|stripped|removed|skipped)|(?:without|no|omit\p{L}*|drop\p{L}*|leav\p{L}+ out|left out|skip\p{L}*) (?:(?:the|any|all) )?minus(?:es)?(?: signs?)?|ohne (?:das )?minus(?:zeichen)?|minus(?:zeichen)? (?:\p{L}+ )?(?:weggelassen|ausgelassen|fehlt|fehlen)|sans (?:le )?(?:signe )?moins|signes? moins (?:omis|oublie|absent)\p{L}*|sin (?:el )?(?:signo )?(?:menos|negativo)|senza (?:il )?(?:segno )?meno|sem (?:o )?(?:sinal )?(?:de )?menos|zonder (?:het )?min(?:teken)?|utan minus(?:tecken)?|uden minus(?:tegn)?|uten minus(?:tegn)?|ilman miinus\p{L}*|bez (?:znaku )?minus\p{L}*|без (?:знака )?минус\p{L}*)(?!\p{L})/u;
/** What is no level of zones (from memory). */
export const otherLevels: RegExp =
  /(?<!\p{L})(?:filters?|releases?|velocit\p{L}*|pan|fades?|crossfades?|noise|rauschen|headroom|rms|lufs|anschlag\p{L}*|rolloff|slope)(?!\p{L})/u;
