/** What every page tells its host beside its own messages: it listens, so that the host may send. */
export interface FrameMessage {
  type: 'ready';
}
