import { bareWord, wordsOf } from '../../languages/spelling';
import { turningWords } from '../../turningWords';

/** Stems of words for tuning, without accents. */
const tuning =
  /(?<!\p{L})(?:tun(?:e|es|ed|ing|ings)(?!\p{L})|detun|intonat|pitch|cents?(?!\p{L})|ct(?!\p{L})|fine(?!\p{L})|stimm|verstimm|feinstimm|tonhoh|accord|desaccord|justesse|afina|desafin|scordat|stonat|intonaz|stemming|ontstem|verstem|stamning|stemning|vire|stroj|rozstroj|odstroj|lade|rozlad|подстро|строй|строя|настрой|расстро|hangol|akort|κουρδισ|τονικ)|調律|チューニング|ピッチ|音高|调音|微调|調音|튜닝|음정/u;
/** Words for the other direction, without accents. */
const opposite =
  /(?<!\p{L})(?:opposite|(?:invert|reverse|flip|switch|change|turn)(?:ed|d|s|ing)? (?:the |its |their )?signs?|signs? (?:(?:is|are|has to be|have to be|must be|should be|needs to be) )?(?:inverted|reversed|flipped|switched|changed|turned)|inverse sign|reversed? signs?|negate[ds]?|other way round|entgegengesetzt|entgegen|umgekehrt|vorzeichen (?:um|dreh|wechs|tausch)|negier|(?:sens|signe) (?:inverse|contraire|oppose)|inverse[rz]? (?:le|du) signe|changer? (?:le|de) signe|(?:sentido|signo|sinal) (?:contrario|inverso|opuesto|oposto|invertido|cambiado|trocado)|(?:invertir|cambiar|inverter|trocar|invertire|cambiare) (?:(?:el|o|il|di) )?(?:signo|sinal|segno)|al reves|ao contrario|(?:senso|segno) (?:contrario|opposto|inverso|invertito)|al contrario|tegengesteld|omgekeerd|andersom|motsatt|omvan[dt]|omvendt|modsat|vastakkai|kaante|przeciwn|odwrot|odwroc|opacn|obracen|обратн|противополож|ellentetes|fordit|ters(?!\p{L})|αντιθετ|αντιστροφ)|逆|反対|反転|相反|取反|반대/u;
/** Words that say how far something is off, without accents. */
const howFar =
  /(?<!\p{L})(?:how (?:far|much|many)|number of cents|cents (?:by which|that)|error|deviation|wie (?:weit|viel|stark)|um wie ?viel|abweich|fehler|de combien|combien|ecart|erreur|cuanto|quanto|desviaci|deviazion|desvio|erro(?!\p{L})|errore|hoeveel|hoe (?:ver|veel)|afwijk|fout|hur (?:mycket|langt)|avvik|hvor (?:meget|mye|langt)|afvig|kuinka|poikkeam|o ile|odchyl|blad|o kolik|на сколько|насколько|отклонен|ошибк|mennyi|elteres|ne kadar|sapma|ποσο|αποκλισ)|ずれ|誤差|偏差|误差|편차|오차/u;
const recording =
  /(?<!\p{L})(?:samples?|recordings?|takes?|notes?|aufnahmen?|klang|echantillon|enregistrement|muestra|grabacion|campion|registrazion|amostra|gravac|opname|monster|inspelning|optagelse|opptak|nayt|probk|nagran|vzor|nahrav|сэмпл|запис|minta|felvetel|kayit|ornek|δειγμα|ηχογραφ)|サンプル|録音|采样|採樣|录音|샘플|녹음/u;
const off =
  /(?<!\p{L})(?:off|sharp|flat|out of tune|too (?:high|low)|detuned|zu (?:hoch|tief|niedrig)|verstimmt|daneben|trop (?:haut|bas|aigu|grave)|faux|fausse|desviad|desafinad|alt[ao]s?(?!\p{L})|baj[ao]s?(?!\p{L})|stonat|scordat|crescent|calant|vals(?!\p{L})|te (?:hoog|laag)|ontstemd|falsk|for (?:hog|lag|hoj|lav)|liian|vire|za (?:wysok|nisk)|rozstroj|prilis|rozlad|высок|низк|фальш|расстро|hamis|tul |tiz|pes(?!\p{L})|ψηλ|χαμηλ|deviat|error|abweich|ecart|afwijk|avvik|afvig|odchyl|отклонен)|ずれ|高い|低い|偏高|偏低|偏差|높|낮/u;
/** Words that make the numbers of a column the ones that mend. */
const mended =
  /(?<!\p{L})(?:correct|fix|compensat|mend|korr|ausgleich|corrig|correg|correz|compens|corrij|gecorr|rett|ratta|korj|skoryg|oprav|исправ|javit|duzelt|διορθ)|補正|修正|校正|보정/u;
const already = new RegExp(turningWords('already'), 'iu');
const negated = new RegExp(
  String.raw`${turningWords('not', 'without')}|(?<!\p{L})(?:no need|kein\p{L}*|geen)(?!\p{L})`,
  'iu',
);
/** What else has a direction. */
const otherThing =
  /(?<!\p{L})(?:pan|pann|panor|balance|balans|left|right|stereo|phase|polarity|phasen?|polarit|links|rechts|gauche|droite|izquierd|derech|sinistr|destr|esquerd|direit|level|volume|gain|velocit|loops?)|左|右/u;
const sentences = /(?<=[.!?;\u3002])\s*/u;
const longest = 2000;
const longestSentence = 300;

/**
 * The sentence that says that the numbers of a column of tunings tell how far the samples are off pitch, or have to be turned round:
 * `Tune is how many cents the sample is sharp`, `Vorzeichen der Stimmung umdrehen`. `undefined` where none does.
 */
export function turnedTuningIn(texts: readonly string[], heading: string): string | undefined {
  const own = wordsOf(heading.replace(/[([].*$/u, '')).join(' ');
  for (const text of texts) {
    let before = '';
    for (const sentence of text.slice(0, longest).split(sentences)) {
      if (sentence.length <= longestSentence) {
        const bare = bareWord(sentence);
        const isNamed = own !== '' && ` ${wordsOf(sentence).join(' ')} `.includes(` ${own} `);
        const isTuning = isNamed || tuning.test(bare);
        // What has to be turned may be named in the sentence before.
        const isMeant = isTuning || (tuning.test(before) && !otherThing.test(bare));
        const isTurned = isMeant && opposite.test(bare) && !negated.test(sentence) && !already.test(sentence);
        if (isTurned || (isNamed && saysHowFar(sentence))) return sentence.trim();
        before = bare;
      }
    }
  }
  return undefined;
}

/** The sentence that says that the recordings were tuned before, so that nothing is left to mend; `undefined` where none does. */
export function tunedBeforeIn(texts: readonly string[]): string | undefined {
  return texts
    .flatMap((text) => text.slice(0, longest).split(sentences))
    .find((sentence) => {
      const bare = bareWord(sentence);
      const isAbout =
        tuning.test(bare.replace(/(?<!\p{L})(?:re|ge|nachge)(?=tun|stimm|stem)/gu, '')) || mended.test(bare);
      const isMeant = sentence.length <= longestSentence && isAbout && recording.test(bare);
      return isMeant && already.test(sentence) && !negated.test(sentence);
    })
    ?.trim();
}

/** Whether a sentence says how far the recordings are off pitch, and not by how much that is mended. */
function saysHowFar(sentence: string): boolean {
  const bare = bareWord(sentence);
  return (
    howFar.test(bare) &&
    recording.test(bare) &&
    off.test(bare) &&
    !mended.test(bare) &&
    !already.test(sentence) &&
    !negated.test(sentence)
  );
}
