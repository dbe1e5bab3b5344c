import { describe, expect, it } from 'vitest';
import { endsIn } from '../../../../server/trade/statements/playing/statedEnds';

// The sentences are plain ones of each language, from memory.

describe('what a clause says of the ends of loops', () => {
  it.each([
    'Loop end is exclusive',
    'The sample at the loop end is not played',
    'Loops are played up to just before the end point',
    'up to but not including the end',
    'Das Schleifenende wird nicht mehr gespielt',
    'Der Loop läuft bis kurz vor das Ende',
    "L'échantillon de fin de boucle n'est pas joué",
    'El fin del bucle no se reproduce',
    'La fine del loop non viene suonata',
    'O fim do loop não é tocado',
    'Het einde van de loop wordt niet meegespeeld, niet inbegrepen',
    'Slutet av loopen spelas inte',
    'Koniec pętli nie jest odtwarzany',
    'Konec smyčky se už nepřehrává',
    'Конец петли не воспроизводится',
    'ループ終了の位置のサンプルは再生されません',
    'ループ終了の直前まで再生',
    '循环结束点不播放',
    '루프 끝은 재생되지 않습니다',
    'Slut anger första ramen EFTER slingan (den spelas inte)',
    'The end is the first frame after the loop',
    'Ende: das erste Bild nach der Schleife',
    'Fin : la trame qui suit, elle est jouée pas',
    'Koniec to pierwsza ramka po pętli',
    'El fin es el primer cuadro después del bucle, no suena',
    'Loop (exclusive)',
    'loop end (excl.)',
    'Loopende exkl',
    'where it jumps back; that frame is not played',
  ])('the frame there is not played: %s', (clause) => {
    expect(endsIn(clause)).toEqual({ are: 'behind', text: clause });
  });

  it.each([
    'Loop end is inclusive',
    'loop end (incl.)',
    'Loopende inkl.',
    'the end is the last sample of the loop',
    'Das Ende ist eingeschlossen, einschließlich',
    'fin de boucle comprise',
    'Konec smyčky včetně',
    'Конец петли включительно',
    'ループ終了を含む',
  ])('the frame there is played: %s', (clause) => {
    expect(endsIn(clause)?.are).toBe('included');
  });

  it.each([
    'The end is the last frame that is played',
    'Slut är sista ramen som spelas',
    'Das Ende ist das letzte Bild der Schleife',
    'After release the loop is not played',
    'Die Schleife wird nicht mehr verwendet',
    'Fine: ultimo campione del ciclo',
  ])('not that the frame there is left out: %s', (clause) => {
    expect(endsIn(clause)?.are).not.toBe('behind');
  });

  it.each([
    'Loop points in frames',
    'Takes are not played on Sundays',
    'Faded out just before the end',
    'フェードは終了直前',
    '',
  ])('nothing: %s', (clause) => {
    expect(endsIn(clause)).toBeUndefined();
  });
});
