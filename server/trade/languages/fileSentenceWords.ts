/** Verbs that ask for a file or say that it is put somewhere, without accents. */
export const puttingVerb: RegExp =
  /^(?:us(?:e|es|ing|ed)|tak(?:e|es|ing)|map(?:s|ped)?|put(?:s)?|plac(?:e|es|ing)|load(?:s|ed)?|assign(?:s|ed)?|play(?:s|ed|ing)?|set|lay|nimm|nehm(?:e|en|t)|verwend(?:e|en|et)|benutz(?:e|en|t)|nutz(?:e|en)|leg(?:e|en|g|t)?|lad(?:e|en)|setz(?:e|en)|spiel(?:e|en|t)?|utilis(?:e|ez|er|ons)|mett(?:ez|re|ons)|mets|prend(?:s|re)|prenez|charg(?:e|ez|er)|jou(?:e|ez|er)|us(?:a|ar|ad|are|ate)|utiliz(?:a|ar|ad|e|zare|za)|utilizza(?:re)?|pon(?:er|ga|e)?|coloc(?:a|ar|que)|carg(?:a|ar|ue)|tom(?:a|ar|e)|asign(?:a|ar|e)|mett(?:i|ere|ete)|caric(?:a|are)|prend(?:i|ere|ete)|assegn(?:a|are)|carreg(?:a|ar|ue)|peg(?:a|ar|ue)|atribu(?:a|ir|i)|gebruik|neem|zet|plaats|laad|speel|anvand|ta|lagg|satt|ladda|brug|bruk|tag|laeg|sett|saet|placer|last|kayta|ota|aseta|lataa|laita|soita|uzy(?:j|c|waj|jcie)|wez|umiesc|ustaw|zaladuj|przypisz|pouzi(?:j|jte|t)|vezmi|vezmete|umisti|umistete|nahraj(?:te)?|prirad(?:te)?|использу(?:й|ите|йте|ем)|возьми(?:те)?|поставь(?:те)?|загрузи(?:те)?|назначь(?:те)?|hasznal(?:d|ja|juk)|vedd|tedd|toltsd|kullan(?:in)?|koy|yukle|χρησιμοποι\p{L}+|βαλε|παρε|φορτωσε)$/u;
/** Words that lead on from the line before. */
export const onwardWord: RegExp =
  /^(?:and|then|next|now|also|finally|please|und|dann|danach|bitte|nun|jetzt|auch|et|puis|ensuite|maintenant|aussi|y|luego|despues|ahora|tambien|poi|quindi|ora|anche|depois|agora|en|dan|daarna|nu|ook|och|sedan|og|saa|derefter|ja|sitten|i|a|potem|nastepnie|pak|potom|и|затем|потом|далее|majd|es|sonra|ve|και|μετα)$/u;
export const articleWord: RegExp =
  /^(?:the|this|a|an|die|der|das|den|dem|eine?n?|diese[rsn]?|le|la|les|un|une|ce|cette|el|los|las|una|este|esta|il|lo|gli|uno|questo|o|os|as|um|uma|de|het|een|dit|deze|en|ett|et|denne|dette|ten|te|tego|to|tento|tuto|этот|эту|az?|bu|το|την|τον)$/u;
/** Between a word for a file and its name: `the first file is a.wav`. */
export const copulaWord: RegExp =
  /^(?:is|was|are|called|named|ist|war|heisst|namens|est|s.appelle|es|era|fue|se|llama|e|chiama|si|chama|heet|ar|heter|er|hedder|on|jest|nazywa|sie|je|jmenuje|это|называется|este|estas|lesz|adi)$/u;
export const numeralWord: RegExp = /^(?:one|two|three|four|five|six|seven|eight|nine|ten)$/u;
export const ordinalWord: RegExp =
  /^(?:\d{1,3}(?:st|nd|rd|th|[.\u00aa\u00ba]|er|e|eme)?|first|second|third|fourth|fifth|sixth|seventh|eighth|ninth|tenth|last|next|other|erste[rsn]?|zweite[rsn]?|dritte[rsn]?|vierte[rsn]?|funfte[rsn]?|sechste[rsn]?|letzte[rsn]?|nachste[rsn]?|premiere?|deuxieme|seconde?|troisieme|quatrieme|cinquieme|sixieme|derniere?|primer[oa]?|segund[oa]|tercer[oa]?|cuart[oa]|quint[oa]|sext[oa]|ultim[oa]|prim[oa]|terz[oa]|primeir[oa]|terceir[oa]|eerste|tweede|derde|vierde|vijfde|laatste|forsta|andra|tredje|fjarde|femte|sista|forste|anden|fjerde|sidste|pierwsz[ya]|drug[ai]|trzeci[a]?|czwart[ya]|ostatni[a]?|prvni|druhy|treti|posledni|первый|второй|третий|четвертый|пятый|последний)$/u;
/** Words for a file or a sample in the forms that sentences have, without accents. */
export const sampleNouns: readonly string[] =
  'sample samples file fichier echantillon datei archivo muestra fichero campione arquivo ficheiro amostra bestand fil fila filen tiedosto nayte tiedostoa naytetta plik plik probka probke probki soubor vzorek файл сэмпл семпл fajl fajlt dosya ornek αρχειο δειγμα'.split(
    ' ',
  );
