import { useState } from 'preact/hooks';
import { now as clock } from '../clock.ts';
import { words } from '../words.ts';
import { ChangeForm } from './ChangeForm.tsx';
import type { Description } from './description.ts';
import { Fields } from './Fields.tsx';
import type { FieldSpec, Texts } from './fieldSpec.ts';
import { textsOf } from './fieldSpec.ts';
import { figure } from './figure.ts';
import { Globe } from './Globe.tsx';
import { ThereNow } from './ThereNow.tsx';
import { useSun } from './useSun.ts';
import { zoneTowns } from './zoneTowns.ts';

/** Of this device, which mostly keeps the farm's time. */
const ownZone = () => new Intl.DateTimeFormat().resolvedOptions().timeZone;
const townOf = (zone: string) => zoneTowns.find((one) => one.zone === zone);

/** Where the farm lies and which time it keeps, with today's sun as the proof of both. */
export function PositionStep({ now }: { now: Description }) {
  const text = words.setUpSteps;
  const facts = now.description?.farm ?? {};
  const [typed, setTyped] = useState<Texts>({});
  const [failed, setFailed] = useState('');
  const zones = Intl.supportedValuesOf('timeZone');
  const told = typed.zone ?? now.description?.farm.zone ?? ownZone();
  const specs: readonly FieldSpec[] = [
    {
      ...{ path: 'zone', as: 'choice' },
      options: (zones.includes(told) ? zones : [told, ...zones]).map((id) => [
        id,
        text.zoneName(id),
      ]),
    },
    { path: 'lat', as: 'figure', required: true },
    { path: 'lon', as: 'figure', required: true },
    { path: 'altitude', as: 'figure' },
  ];
  const kept = textsOf(facts, specs);
  const texts: Texts = { ...kept, zone: told, ...typed };
  const [lat, lon] = [figure(texts.lat ?? ''), figure(texts.lon ?? '')];
  const point = typeof lat === 'number' && typeof lon === 'number' ? { lat, lon } : null;
  const sun = useSun(point);
  const put = (more: Texts) => setTyped((old) => ({ ...old, ...more }));
  const here = () =>
    navigator.geolocation.getCurrentPosition(
      ({ coords }) => {
        setFailed('');
        put({
          lat: coords.latitude.toFixed(3), // a hundred metres: more is nobody's need
          lon: coords.longitude.toFixed(3),
          ...(coords.altitude !== null && { altitude: coords.altitude.toFixed(0) }),
        });
      },
      () => setFailed(text.hereFailed),
    );
  const whole = lat !== undefined && lon !== undefined;
  const farm = { ...facts, zone: told, lat, lon, altitude: figure(texts.altitude ?? '') ?? 0 };
  const town = townOf(told);
  return (
    <ChangeForm
      next={whole ? { ...now.description, farm } : null}
      beside={(field) => specs.some(({ path }) => field === `farm.${path}`)}
      label={text.storeAndGo}
      then="/set-up/units"
      onStored={() => setTyped({})}
    >
      {(faultOf) => (
        <>
          {isSecureContext ? (
            <button type="button" onClick={here}>
              {text.here}
            </button>
          ) : (
            <p class="quiet">{text.hereNot}</p>
          )}
          <p role="status">{failed}</p>
          <Fields
            specs={specs.slice(0, 1)}
            told={words.setUpFields.where}
            texts={texts}
            onType={(path, value) => put({ [path]: value })}
            faultOf={(path) => faultOf(`farm.${path}`)}
          />
          {town && (point === null || point.lat !== town.lat || point.lon !== town.lon) && (
            <button
              type="button"
              onClick={() => put({ lat: String(town.lat), lon: String(town.lon) })}
            >
              {text.startAt(text.zoneTown(told))}
            </button>
          )}
          <Globe
            at={point ?? { lat: town?.lat ?? 0, lon: town?.lon ?? 0 }}
            onMove={(to) => put({ lat: String(to.lat), lon: String(to.lon) })}
          />
          <Fields
            specs={specs.slice(1)}
            told={words.setUpFields.where}
            texts={texts}
            onType={(path, value) => put({ [path]: value })}
            faultOf={(path) => faultOf(`farm.${path}`)}
          />
          <ThereNow zone={told} now={clock.value} point={point} sun={sun} />
        </>
      )}
    </ChangeForm>
  );
}
