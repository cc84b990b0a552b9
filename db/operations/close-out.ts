import type { Handlers } from '../context.ts';
import { closeOutOf } from '../order/close-out.ts';

export const closeOutHandlers: Handlers = {
  'closeOut.get': ({ orderId }, context) => closeOutOf(context, orderId),
};
