import { useState } from 'preact/hooks';
import type { BatchFileResult } from '../../hub/contract/index.ts';
import { useSending } from '../coolRoom/useSending.ts';
import { mayChange } from '../state.ts';
import { dayName } from '../times.ts';
import { words } from '../words.ts';
import { takeFile } from './commands.ts';

const SHOWN = 12; // batches and refused rows shown in full; the rest are counted
const LARGEST = 2_000_000; // bytes, as the hub takes

/** Batches out as a file, and in: looked at before anything is entered. */
export function BatchFilePart({ zone, onEntered }: { zone: string; onEntered: () => void }) {
  const text = words.batches;
  const [csv, setCsv] = useState('');
  const [result, setResult] = useState<BatchFileResult | null>(null);
  const [tooLong, setTooLong] = useState(false);
  const { sending, failed, send } = useSending();
  const look = async (file: File | undefined) => {
    setResult(null);
    setTooLong(file !== undefined && file.size > LARGEST);
    if (file === undefined || file.size > LARGEST) return;
    const read = await file.text();
    setCsv(read);
    const seen = await send(() => takeFile(read, false));
    if (seen) setResult(seen);
  };
  const enter = async () => {
    const entered = await send(() => takeFile(csv, true));
    if (!entered) return;
    setResult(entered);
    onEntered();
  };
  return (
    <section>
      <h2>{text.file}</h2>
      <p>
        <a class="batch-link" href="/api/batches.csv" download>
          {text.fileOut}
        </a>
      </p>
      {mayChange.value && (
        <div class="batch-form">
          <p class="quiet">{text.fileWhy}</p>
          <label>
            {text.fileIn}
            <input
              type="file"
              accept=".csv,text/csv,text/plain"
              onChange={(event) => look(event.currentTarget.files?.[0])}
            />
          </label>
          <div role="status">
            {tooLong && <p class="failed-line">{text.fileTooLong}</p>}
            {failed !== '' && <p class="failed-line">{failed}</p>}
            {result && <Seen result={result} zone={zone} />}
          </div>
          {result && !result.entered && result.entries > 0 && (
            <p>
              <button type="button" class="main" aria-disabled={sending} onClick={enter}>
                {sending ? text.sending : text.fileEnter}
              </button>
            </p>
          )}
        </div>
      )}
    </section>
  );
}

function Seen({ result, zone }: { result: BatchFileResult; zone: string }) {
  const text = words.batches;
  const { entered, batches, entries, known, refused, ignored } = result;
  return (
    <>
      <p>
        {entered
          ? text.fileEntered(batches.length, entries)
          : entries === 0
            ? text.fileNothing
            : text.fileWould(batches.length, entries)}{' '}
        {known > 0 && text.fileKnown(known)}
      </p>
      {ignored.length > 0 && <p>{text.fileIgnored(ignored.join(', '))}</p>}
      {!entered && (
        <ul class="plain-list">
          {batches
            .slice(0, SHOWN)
            .map(({ id, name, trays, sownAt, placeName, entries: n, fresh }) => (
              <li key={id}>
                {text.fileBatch(
                  text.name(trays, name, null),
                  dayName(Date.parse(sownAt), zone),
                  placeName,
                  n,
                  fresh,
                )}
              </li>
            ))}
          {batches.length > SHOWN && <li>{text.fileMore(batches.length - SHOWN)}</li>}
        </ul>
      )}
      {refused.length > 0 && (
        <>
          <p>{text.fileRefused(refused.length)}</p>
          <ul class="plain-list">
            {refused.slice(0, SHOWN).map(({ line, reason }) => (
              <li key={line}>{text.fileLine(line, reason)}</li>
            ))}
            {refused.length > SHOWN && <li>{text.fileMore(refused.length - SHOWN)}</li>}
          </ul>
        </>
      )}
    </>
  );
}
