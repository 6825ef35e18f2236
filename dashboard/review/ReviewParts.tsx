import type { SeasonReview } from '../../hub/contract/index.ts';
import { FigureTable } from '../parts/FigureTable.tsx';
import { words } from '../words.ts';

type Part = { readonly review: SeasonReview };

/** Tasks by kind, and what became of them. */
export function AskedPart({ review: { kinds, all, money } }: Part) {
  const text = words.review;
  const row = (name: string, one: Omit<SeasonReview['all'], 'putOff'>) => [
    ...[name, one.asked, one.done, one.late, one.no, one.lapsed, one.open],
    ...[words.number(one.minutesAsked, 0), words.number(one.minutesDone, 0)],
    text.spared(one.spared, money),
  ];
  return (
    <section>
      <h2>{text.asked}</h2>
      {kinds.length === 0 ? (
        <p class="quiet">{text.none}</p>
      ) : (
        <FigureTable
          look="review-table"
          label={text.asked}
          columns={Object.values(text.columns)}
          rows={kinds.map((one) => row(one.name, one))}
          foot={row(text.sum, all)}
        />
      )}
      {all.putOff > 0 && <p>{text.putOff(all.putOff)}</p>}
    </section>
  );
}

/** What was lost, by place, crop and what it looked like. */
export function LostPart({ review: { lost, money } }: Part) {
  const text = words.review;
  return (
    <section>
      <h2>{text.lost}</h2>
      {lost.rows.length === 0 ? (
        <p class="quiet">{text.noLoss}</p>
      ) : (
        <FigureTable
          look="review-table"
          label={text.lost}
          columns={Object.values(text.lostColumns)}
          rows={lost.rows.map((one) => [
            ...[one.placeName, one.name, one.looked, one.entries],
            one.kg === null ? words.notKnown : words.bareWeight(one.kg, 1),
            text.money(one.money, money),
          ])}
        />
      )}
    </section>
  );
}

/** Each way of telling tonight's low, held against what came. */
export function ForecastPart({ review: { forecasts } }: Part) {
  const text = words.review;
  return (
    <section>
      <h2>{text.forecasts}</h2>
      {forecasts.length === 0 ? (
        <p class="quiet">{text.noForecast}</p>
      ) : (
        <FigureTable
          look="review-table"
          label={text.forecasts}
          columns={Object.values(text.forecastColumns)}
          rows={forecasts.map((one) => [
            text.spotOf(one.name, one.spot),
            words.frost.methods[one.method] ?? one.method,
            one.nights,
            words.apart(one.error, 1),
            ...[one.below, one.misses, one.falseAlarms],
          ])}
        />
      )}
    </section>
  );
}

export function AlarmPart({ review: { alarms } }: Part) {
  const text = words.review;
  return (
    <section>
      <h2>{text.alarms}</h2>
      {alarms.length === 0 ? (
        <p class="quiet">{text.noAlarm}</p>
      ) : (
        <FigureTable
          look="review-table"
          label={text.alarms}
          columns={Object.values(text.alarmColumns)}
          rows={alarms.map((one) => [
            ...[one.name, one.raised, one.seen, text.wait(one.minutesToSeen)],
            ...[text.wait(one.slowest), one.neverSeen, one.falseOnes],
          ])}
        />
      )}
    </section>
  );
}

export function UnreadPart({ review: { unread } }: Part) {
  const text = words.review;
  return (
    <section>
      <h2>{text.unread}</h2>
      <FigureTable
        look="review-table"
        label={text.unread}
        columns={Object.values(text.unreadColumns)}
        rows={unread.map((one) => [
          ...[one.name, one.days],
          one.hours === null ? words.notKnown : words.number(one.hours, 1),
          text.share(one.share),
        ])}
      />
    </section>
  );
}
