import { useEffect, useState } from 'preact/hooks';
import type { SunToday } from '../../hub/contract/index.ts';
import { ask } from '../ask.ts';
import { now as clock } from '../clock.ts';
import { Choice, Field } from '../coolRoom/Field.tsx';
import { timeOfDay } from '../times.ts';
import { words } from '../words.ts';
import { ChangeForm } from './ChangeForm.tsx';
import type { Description } from './description.ts';
import { figure } from './figure.ts';

const shown = (value: number | undefined) => (value === undefined ? '' : String(value));
const zones = Intl.supportedValuesOf('timeZone');

/** Where the farm lies and which time it keeps, with today's sun as the proof of both. */
export function PositionStep({ now }: { now: Description }) {
  const text = words.setUpSteps;
  const facts = now.description?.farm;
  const [lat, setLat] = useState(shown(facts?.lat));
  const [lon, setLon] = useState(shown(facts?.lon));
  const [altitude, setAltitude] = useState(shown(facts?.altitude));
  const [zone, setZone] = useState(
    facts?.zone ?? new Intl.DateTimeFormat().resolvedOptions().timeZone,
  );
  const [failed, setFailed] = useState('');
  const [sun, setSun] = useState<SunToday | null>(null);
  const [north, east] = [figure(lat), figure(lon)];
  useEffect(() => {
    setSun(null);
    if (typeof north !== 'number' || typeof east !== 'number') return;
    let wanted = true;
    ask<SunToday>(`/api/sun?lat=${north}&lon=${east}`).then(
      (found) => wanted && setSun(found),
      () => {}, // out of range: the preview says so
    );
    return () => {
      wanted = false;
    };
  }, [north, east]);
  const here = () =>
    navigator.geolocation.getCurrentPosition(
      ({ coords }) => {
        setFailed('');
        setLat(coords.latitude.toFixed(3)); // a hundred metres: more is nobody's need
        setLon(coords.longitude.toFixed(3));
        if (coords.altitude !== null) setAltitude(coords.altitude.toFixed(0));
      },
      () => setFailed(text.hereFailed),
    );
  const told = { lat: north, lon: east, altitude: figure(altitude) ?? 0, zone };
  const whole = north !== undefined && east !== undefined;
  const options = (zones.includes(zone) ? zones : [zone, ...zones]).map((id) => [id, id] as const);
  return (
    <ChangeForm next={whole ? { ...now.description, farm: { ...facts, ...told } } : null}>
      {isSecureContext ? (
        <button type="button" onClick={here}>
          {text.here}
        </button>
      ) : (
        <p class="quiet">{text.hereNot}</p>
      )}
      <p role="status">{failed}</p>
      <Field label={text.lat} value={lat} onType={setLat} kind="number" required />
      <Field label={text.lon} value={lon} onType={setLon} kind="number" required />
      <Field label={text.altitude} value={altitude} onType={setAltitude} kind="number" />
      <Choice label={text.zone} value={zone} options={options} onChoose={setZone} />
      {clock.value !== null && <p class="quiet">{text.clockThere(timeOfDay(clock.value, zone))}</p>}
      {typeof north === 'number' && typeof east === 'number' && <Where lat={north} lon={east} />}
      <p role="status">
        {sun !== null &&
          (sun.rise === null || sun.set === null
            ? text.noSun
            : text.sun(
                timeOfDay(Date.parse(sun.rise), zone),
                timeOfDay(Date.parse(sun.set), zone),
              ))}
      </p>
    </ChangeForm>
  );
}

/** A point among lines of 30 degrees: enough to see a sign that is wrong. */
function Where({ lat, lon }: { lat: number; lon: number }) {
  const lines = Array.from({ length: 11 }, (_, i) => 30 * (i + 1));
  return (
    <svg class="set-up-map" viewBox="0 0 360 180" role="img" aria-label={words.setUpSteps.map}>
      {lines.map((x) => (
        <line key={`x${x}`} x1={x} x2={x} y1={0} y2={180} />
      ))}
      {lines.slice(0, 5).map((y) => (
        <line key={`y${y}`} x1={0} x2={360} y1={y} y2={y} />
      ))}
      <circle cx={lon + 180} cy={90 - lat} r={5} />
    </svg>
  );
}
