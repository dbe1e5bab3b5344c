import { NotificationType0 } from 'vscode-languageserver-protocol';

/** Says that a person comes back to the editor, so that files may have come, gone or changed meanwhile. */
export const LookAgainNotification = {
  type: new NotificationType0('zonewright/lookAgain'),
} as const;
