import { NotificationType0 } from 'vscode-languageserver-protocol';

/** Says that the open folder is trusted from now on; `trusted: false` in the options that the server was started with said that it was not. */
export const TrustGrantedNotification = {
  type: new NotificationType0('zonewright/trustGranted'),
} as const;
