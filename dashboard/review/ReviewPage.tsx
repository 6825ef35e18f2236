import './review.css';
import { useState } from 'preact/hooks';
import type { SeasonReview } from '../../hub/contract/index.ts';
import { useFacts } from '../coolRoom/useFacts.ts';
import { DateFields } from '../parts/DateFields.tsx';
import { Fault } from '../parts/Fault.tsx';
import { Heading } from '../parts/Heading.tsx';
import { go, query } from '../router.ts';
import { words } from '../words.ts';
import { AlarmPart, AskedPart, ForecastPart, LostPart, UnreadPart } from './ReviewParts.tsx';

const asked = (from: string, to: string) => String(new URLSearchParams({ from, to }));

/** A season on one sheet: what was asked, answered, spared and lost. */
export function ReviewPage() {
  const text = words.review;
  const said = new URLSearchParams(query.value);
  const [from, to] = [said.get('from'), said.get('to')];
  const search = from === null || to === null ? '' : `?${asked(from, to)}`;
  const { facts: review, fault, again } = useFacts<SeasonReview>(`/api/review${search}`);
  return (
    <div class="review-sheet">
      <Heading title={text.title} />
      {review === null ? (
        <Fault sentence={fault} again={again} />
      ) : (
        <>
          <p class="sentence">{review.sentence}</p>
          <Choose key={`${review.from} ${review.to}`} review={review} />
          <AskedPart review={review} />
          <LostPart review={review} />
          <ForecastPart review={review} />
          <MinutesPart review={review} />
          <AlarmPart review={review} />
          <UnreadPart review={review} />
          <section>
            <h2>{text.notes}</h2>
            <ul>
              {review.notes.map((note) => (
                <li key={note}>{note}</li>
              ))}
            </ul>
          </section>
        </>
      )}
    </div>
  );
}

/** Which days: a season, or any; and the sheet as paper or as a table. */
function Choose({ review }: { review: SeasonReview }) {
  const text = words.review;
  const [from, setFrom] = useState(review.from);
  const [to, setTo] = useState(review.to);
  const shown = asked(review.from, review.to);
  return (
    <div class="review-choose">
      <nav class="review-spans" aria-label={text.spans}>
        {review.spans.map((one) => {
          const search = asked(one.from, one.to);
          return (
            <a
              key={one.name}
              href={`/review?${search}`}
              {...(search === shown ? { 'aria-current': 'page' as const } : {})}
            >
              {one.name}
            </a>
          );
        })}
      </nav>
      <form
        class="review-days"
        aria-label={text.range}
        onSubmit={(event) => {
          event.preventDefault();
          go(`/review?${asked(from, to)}`);
        }}
      >
        <DateFields text={text} from={from} to={to} onFrom={setFrom} onTo={setTo} />
        <button type="submit">{text.show}</button>
      </form>
      <p class="review-out">
        <button type="button" class="main" onClick={() => print()}>
          {text.print}
        </button>
        <a href={`/api/review.csv?${shown}`} download>
          {text.file}
        </a>
      </p>
    </div>
  );
}

function MinutesPart({ review: { all, written } }: { review: SeasonReview }) {
  const text = words.review;
  return (
    <section>
      <h2>{text.minutes}</h2>
      <ul>
        {text
          .minuteLines({ asked: all.minutesAsked, done: all.minutesDone, ...written })
          .map((line) => (
            <li key={line}>{line}</li>
          ))}
      </ul>
    </section>
  );
}
