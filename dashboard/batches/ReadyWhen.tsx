import './growing.css';
import type { BatchCourse, ReadyStage } from '../../hub/contract/index.ts';
import { useFacts } from '../coolRoom/useFacts.ts';
import { Fault } from '../parts/Fault.tsx';
import { shortDay } from '../times.ts';
import { words } from '../words.ts';
import { HeatPicture } from './HeatPicture.tsx';

/** When a batch is ready: in words, as a small picture, and day by day. For the batch's card. */
export function ReadyWhen({ id }: { id: string }) {
  const { facts, fault, again } = useFacts<BatchCourse>(
    `/api/batches/${encodeURIComponent(id)}/ready`,
  );
  if (!facts) return fault === undefined ? null : <Fault sentence={fault} again={again} />;
  const text = words.growing;
  const both = facts.young !== null && facts.young.seenAt === null;
  return (
    <div class="ready-when">
      {both && facts.young && <Stage label={text.readyYoung} stage={facts.young} />}
      <Stage label={both ? text.ready : null} stage={facts.later} />
      <HeatPicture course={facts} stage={facts.later} />
      {facts.later.need !== null && (
        <details>
          <summary>{text.inFigures}</summary>
          <table>
            <thead>
              <tr>
                <th scope="col">{text.day}</th>
                <th scope="col" class="tally">
                  {text.units}
                </th>
              </tr>
            </thead>
            <tbody>
              {facts.lived.map(({ day, degreeDays }) => (
                <tr key={day}>
                  <th scope="row">{shortDay(day)}</th>
                  <td class="tally">{text.figure(degreeDays, null, null, 0)}</td>
                </tr>
              ))}
            </tbody>
          </table>
        </details>
      )}
    </div>
  );
}

function Stage({ label, stage }: { label: string | null; stage: ReadyStage }) {
  return (
    <p class="ready-words">
      {label !== null && <strong>{label}: </strong>}
      {stage.words}
    </p>
  );
}
