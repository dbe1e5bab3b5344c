import { l10n } from '../../../webview/page/l10n';

/** How a map is used by keys and, where it can be changed, how it is. */
export function mapHelp(isChangeable: boolean): string {
  const moving = l10n.t(
    'Arrow keys move to the nearest shape, Page Up and Page Down step through all of them. Enter shows a region in the text, O its group alone, Escape goes back. Plus and minus zoom.',
  );
  const changing = l10n.t(
    'Drag a shape, a border, a corner or a root mark; Alt parts a border from its neighbours, Shift keeps it from settling on other borders. Space chooses several shapes. G takes what is chosen in hand, and arrow keys then move it. Samples and folders of them are dropped here from the explorer, with Shift held down, or added by its menu.',
  );
  return isChangeable ? `${moving} ${changing}` : moving;
}
