import type { CoolRoom } from '../../hub/contract/index.ts';
import { FigureTable } from '../parts/FigureTable.tsx';
import { farm } from '../state.ts';
import { calendarDay, shortDay } from '../times.ts';
import { words } from '../words.ts';
import { EnergyChart } from './EnergyChart.tsx';
import { RoomEnergyLine } from './RoomEnergyLine.tsx';

/** Energy of a cool room: the last day, what the set burnt for it, and whether it creeps up. */
export function RoomEnergy({ room, zone }: { room: CoolRoom; zone: string }) {
  const { kWhPerDay, dutyCycle } = room.energy;
  const text = words.room;
  const { fuel, trend } = room;
  const known = room.energyDays.some(({ kilowattHours }) => kilowattHours !== null);
  const money = fuel?.money == null ? null : words.cents(fuel.money, farm.value?.money ?? 'EUR');
  return (
    <section>
      <h2>{text.energy}</h2>
      {kWhPerDay === null && dutyCycle === null ? (
        <p class="quiet">{known ? text.perDay(null) : text.energyNone}</p>
      ) : (
        <p>
          {text.perDay(kWhPerDay)} {text.duty(dutyCycle)}
        </p>
      )}
      {fuel && (
        <>
          <p>
            {text.fuel(fuel, money)} {text.carbon(fuel.carbonDioxide)}{' '}
            {fuel.unlikely &&
              fuel.perKilowattHour !== null &&
              text.fuelUnlikely(fuel.perKilowattHour)}
          </p>
          <p class="quiet">{text.fuelFrom(fuel)}</p>
        </>
      )}
      {known && (
        <>
          <p>
            {text.trendLine(
              room,
              trend.since === null ? '' : shortDay(calendarDay(Date.parse(trend.since), zone)),
            )}
          </p>
          <EnergyChart days={room.energyDays} compared={trend.above !== null} zone={zone} />
          <EnergyTable room={room} zone={zone} />
        </>
      )}
    </section>
  );
}

/** The same as figures, with the line they were held against. */
function EnergyTable({ room, zone }: { room: CoolRoom; zone: string }) {
  const text = words.room;
  const { above } = room.trend;
  const cell = (value: number | null, digits = 1) =>
    value === null ? words.places.dash : words.number(value, digits);
  return (
    <details>
      <summary>{text.energyTable}</summary>
      <RoomEnergyLine room={room} />
      <FigureTable
        label={text.energyTable}
        look="energy-figures"
        columns={Object.values(text.energyColumns)}
        rows={room.energyDays
          .toReversed()
          .map((day) => [
            shortDay(calendarDay(Date.parse(day.from), zone)),
            cell(day.kilowattHours),
            day.gap === null ? words.places.dash : words.apart(day.gap),
            cell(day.duty === null ? null : day.duty * 100, 0),
            cell(day.index === null ? null : words.perDegree(day.index), 2),
            cell(above === null ? null : day.usual),
          ])}
      />
    </details>
  );
}
