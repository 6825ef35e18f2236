import { useState } from 'preact/hooks';
import { Choice, Field } from '../coolRoom/Field.tsx';
import { keptFigure } from '../typed.ts';
import { words } from '../words.ts';
import { ChangeForm } from './ChangeForm.tsx';
import type { Description } from './description.ts';
import { Listed } from './Listed.tsx';

/** Days on which something is delivered, and what is wanted on them. */
export function DeliveryStep({ now }: { now: Description }) {
  const text = words.setUpSteps;
  const { crops = [], mixes = [], deliveries = [] } = now.description ?? {};
  const [day, setDay] = useState('');
  const [of, setOf] = useState('');
  const [kg, setKg] = useState('');
  const [without, setWithout] = useState<string | null>(null);
  const sold = [...crops, ...mixes].map(({ id, name }) => [id, name ?? id] as const);
  const nameOf = (id: string) => sold.find(([one]) => one === id)?.[1] ?? id;
  const want = of === '' ? [] : [{ of, kg: keptFigure(kg, 'kg') }];
  const there = deliveries.find((one) => one.day === day);
  const list = there
    ? deliveries.map((one) => (one === there ? { day, wants: [...one.wants, ...want] } : one))
    : [...deliveries, { day, wants: want }];
  return (
    <>
      <Listed
        items={deliveries.map((one) => ({
          id: one.day,
          words: text.deliveryLine(
            text.days[one.day] ?? one.day,
            one.wants.map((each) => ({ ...each, of: nameOf(each.of) })),
          ),
        }))}
        onTakeOut={setWithout}
      />
      {without !== null && (
        <ChangeForm
          next={{ ...now.description, deliveries: deliveries.filter((one) => one.day !== without) }}
        >
          <h3>{text.forName(text.takeOut, text.days[without] ?? without)}</h3>
        </ChangeForm>
      )}
      <h2>{text.addDelivery}</h2>
      <ChangeForm next={day === '' ? null : { ...now.description, deliveries: list }}>
        <Choice
          label={text.day}
          value={day}
          none={text.choose}
          options={Object.entries(text.days)}
          onChoose={setDay}
        />
        <Choice label={text.wanted} value={of} none={text.none} options={sold} onChoose={setOf} />
        {of !== '' && <Field label={text.kg} value={kg} onType={setKg} kind="number" />}
      </ChangeForm>
    </>
  );
}
