/** Words for what is so at first, as the way of playing that sounds before a keyswitch is pressed (from memory). */
export const initialWords: ReadonlySet<string> = new Set(
  (
    'initial initially default standard first start starting active selected preselected chosen anfang anfangs vorgabe ausgewaehlt aktiv ' +
    'voreingestellt defaut depart actif initiale inicial defecto predeterminado activo inicio iniziale predefinito attivo padrao ativo ' +
    'beginstand standaard actief forvalt forste oletus domyslny poczatkowy vychozi'
  ).split(' '),
);
