import './growing.css';
import type { BatchCourse, ReadyStage } from '../../hub/contract/index.ts';
import { FigureTable } from '../parts/FigureTable.tsx';
import { shortDay } from '../times.ts';
import { words } from '../words.ts';
import { HeatPicture } from './HeatPicture.tsx';

/** When a batch is ready: in words, as a small picture, and day by day. For the batch's card. */
export function ReadyWhen({ course: facts }: { course: BatchCourse }) {
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
          <FigureTable
            columns={[text.day, text.units]}
            rows={facts.lived.map(({ day, degreeDays }) => [
              shortDay(day),
              text.figure(degreeDays, null, null, 0),
            ])}
          />
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
