import type { Backtest } from '../../hub/contract/index.ts';
import { farm } from '../state.ts';
import { shortDay } from '../times.ts';
import { words } from '../words.ts';
import { FigureTable } from './FigureTable.tsx';

/** How the rule would have done on past autumns, beside the plain rule and beside foresight. */
export function TrialResult({ result }: { result: NonNullable<Backtest['result']> }) {
  const text = words.cutBack.trial;
  const currency = farm.value?.money ?? 'EUR';
  const money = (value: number) => words.cutBack.money(value, currency);
  const { rule, averageDate, seasons, within, foresight, years } = result;
  const said = (one: typeof rule) => ({ ...one, n: seasons, money: money(one.money) });
  return (
    <>
      <p>{text.rule(said(rule), within)}</p>
      <p>{text.average(said(averageDate), shortDay(averageDate.day), within)}</p>
      <p>{text.foresight(money(foresight))}</p>
      <details>
        <summary>{text.years}</summary>
        <FigureTable
          look="ahead"
          columns={Object.values(text.columns)}
          rows={years.map(({ season, stop, frost, money: made }) => [
            season,
            shortDay(stop),
            frost === null ? text.noFrost : shortDay(frost),
            money(made),
          ])}
        />
      </details>
    </>
  );
}
