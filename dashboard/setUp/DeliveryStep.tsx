import { words } from '../words.ts';
import type { Description } from './description.ts';
import type { Item } from './fieldSpec.ts';
import { ListPart } from './ListPart.tsx';
import { deliveryFields } from './partFields.ts';

/** Days on which something is delivered, and what is wanted on them. */
export function DeliveryStep({ now }: { now: Description }) {
  const text = words.setUpSteps;
  const farm = now.description;
  if (farm === null) return null;
  const nameOf = (id: string) =>
    [...farm.crops, ...farm.mixes].find((one) => one.id === id)?.name ?? id;
  const dayOf = (delivery: Item) => text.days[String(delivery.day)] ?? String(delivery.day);
  return (
    <ListPart
      now={now}
      list="deliveries"
      told={words.setUpFields.delivery}
      title={text.addDelivery}
      nameOf={dayOf}
      lineOf={(delivery) => {
        const { wants = [] } = delivery as Partial<(typeof farm.deliveries)[number]>;
        return text.deliveryLine(
          dayOf(delivery),
          wants.map((each) => ({ ...each, of: nameOf(each.of) })),
        );
      }}
      specs={() => deliveryFields(farm)}
      begin={() => ({})}
      whole={(delivery) => (delivery.day === undefined ? null : delivery)}
    />
  );
}
