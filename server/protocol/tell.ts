import type { Connection, MessageType } from 'vscode-languageserver';
import { ShowMessageNotification } from 'vscode-languageserver';

/** Says something that asks for no answer. */
export function tell(connection: Connection, type: MessageType, message: string): void {
  void connection.sendNotification(ShowMessageNotification.type, { type, message });
}
