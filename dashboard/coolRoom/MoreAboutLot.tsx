import type { Cooling, LotClass, LotOffers } from '../../hub/contract/index.ts';
import { today } from '../state.ts';
import { words } from '../words.ts';
import { Choice } from './Field.tsx';

/** What may be said of a lot besides crop and weight; '' is not told. */
export type More = {
  readonly from: string;
  /** Minutes from harvest to now. */
  readonly wait: string;
  readonly cooled: Cooling | '';
  readonly of: LotClass | '';
};
type Offer = LotOffers['crops'][number];

const WAITS = ['0', '60', '120', '240', '480'] as const;

/** As it was the last time this crop was put away. */
export const moreOf = ({ from, waitMinutes, cooled }: Offer): More => ({
  from: from ?? '',
  wait: waitMinutes === null ? '' : String(waitMinutes),
  cooled: cooled ?? '',
  of: '',
});

/** Tunnels and patches by id and name. */
export const fieldsOfFarm = () =>
  (today.value?.places ?? [])
    .filter(({ kind }) => kind === 'tunnel' || kind === 'patch')
    .map(({ id, name }) => [id, name] as const);

/** Where from, how long ago, how cooled, and what food rules see in it. */
export function MoreAboutLot({
  more,
  offer,
  onChange,
}: {
  more: More;
  offer: Offer;
  onChange: (more: More) => void;
}) {
  const text = words.lots;
  const last = offer.waitMinutes;
  const waits = WAITS.map((one) => [one, text.waits[one]] as const);
  const own =
    last === null || WAITS.some((one) => Number(one) === last)
      ? []
      : [[String(last), text.lastWait(last)] as const];
  return (
    <div class="quick-more">
      <Choice
        label={text.wait}
        value={more.wait}
        none={text.waits.none}
        options={[...own, ...waits]}
        onChoose={(wait) => onChange({ ...more, wait })}
      />
      <Choice
        label={text.from}
        value={more.from}
        none={text.fromNone}
        options={fieldsOfFarm()}
        onChoose={(from) => onChange({ ...more, from })}
      />
      <details>
        <summary>{text.more}</summary>
        <Choice
          label={text.cooling}
          value={more.cooled}
          none={text.coolingNone}
          options={Object.entries(text.coolings)}
          onChoose={(cooled) => onChange({ ...more, cooled: cooled as Cooling | '' })}
        />
        <Choice
          label={text.class}
          value={more.of}
          none={text.classDefault}
          options={Object.entries(text.classes)}
          onChoose={(of) => onChange({ ...more, of: of as LotClass | '' })}
        />
      </details>
    </div>
  );
}
