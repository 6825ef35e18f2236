import type { LossHistory } from '../../hub/contract/index.ts';
import { PhotoPick } from '../photos/PhotoPick.tsx';
import { changeLoss } from './commands.ts';

/** Adds a photo to a loss that is stored already. */
export function PhotoButton({
  loss,
  onDone,
}: {
  loss: string;
  onDone: (changed: LossHistory) => void;
}) {
  return <PhotoPick onSent={async (photo) => onDone(await changeLoss(loss, { photo }))} />;
}
