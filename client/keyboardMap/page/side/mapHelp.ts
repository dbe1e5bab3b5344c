import { l10n } from '../../../webview/page/l10n';

/** How a map is used by keys and, where it can be changed, how it is. */
export function mapHelp(isChangeable: boolean): string {
  const moving = l10n.t(
    'Arrow keys move to the nearest shape, Page Up and Page Down step through all of them. Enter shows a region in the text, O its group alone, Escape goes back. Plus and minus zoom.',
  );
  const changing = l10n.t(
    'Drag a shape, a border, a corner or a root mark. Hold Alt to move a border without its neighbours, Shift to keep it from settling on other borders. Space chooses several shapes. G picks up what is chosen, and the arrow keys then move it. Drop samples or folders of them here from the explorer, with Shift held down, or add them by its menu.',
  );
  return isChangeable ? `${moving} ${changing}` : moving;
}
