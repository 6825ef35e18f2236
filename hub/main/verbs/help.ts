const texts: Readonly<Record<string, string>> = {
  start: `dewpost start [--data DIR] [--http HOST:PORT] [--mqtt HOST:PORT] [--broker URL] [--farm FILE] [--open]
              [--cert FILE --key FILE] [--host NAME] [--mqtts HOST:PORT] [--ca FILE] [--share GROUP]
              [--gather SECONDS] [--backup DIR] [--keep-raw DAYS]
  Runs the hub.
  --data DIR        where everything is kept (./dewpost-data)
  --http HOST:PORT  where the pages are (127.0.0.1:8470; 0.0.0.0:8470 for the farm's network)
  --mqtt HOST:PORT  where probes speak to the broker inside (127.0.0.1:1883)
  --broker URL      use a broker that is there already: mqtt://[user:password@]HOST[:PORT]
  --ca FILE         the certificate authority (PEM) of a broker at mqtts://…
  --share GROUP     several hubs at one broker: each message goes to one hub of the group
  --mqtts HOST:PORT where probes speak to the broker inside with TLS, beside --mqtt
  --farm FILE       the farm file, taken in when the store has no farm yet
  --open            nobody signs in, probes need no password; only on this machine's own addresses
  --cert FILE --key FILE  certificate and private key in PEM: the pages come over TLS, and --mqtts too
  --host NAME       a further name the pages are asked for by; may be given several times
  --gather SECONDS  with many probes, one commit in so many seconds (2); spares the card
  --backup DIR      a checked copy of everything goes there each night; the folder must be there
  --keep-raw DAYS   single readings older than this are let go of (800); their hours and days stay
  --clock START/REAL/SPEED  for demonstrations: START (ISO 8601) when the wall clock said REAL (ms)`,
  replay: `dewpost replay --farm FILE --readings FILE [--from T] [--to T] [--limits FILE] [--json]
  Feeds readings (one JSON object a line: probe, quantity, t, value) through the real intake, store
  and rules, under a clock that follows them. --limits FILE: a farm file with other limits.
  --json prints one document with days, tasks, alarms, frost and what was rejected.`,
  import: `dewpost import FILE [--data DIR] [--farm FILE] [--clock START/REAL/SPEED]
  Takes in readings, one JSON object a line: {"probe", "quantity", "t", "value"}; "unit" if another.
dewpost import FILE --station NAME --lat=DEGREES --lon=DEGREES [--altitude=METRES] [--observed-at HOUR] [--data DIR]
  Takes in the past record of a weather station, once each day: GHCN-Daily (.dly), ISD-Lite, or CSV
  with the columns date,tmin,tmax[,tavg,rain] in °C and mm, days as 2025-10-15. South and west are
  negative. --observed-at 7: a reader looks at 7 in the morning, so maxima are of the day before.
dewpost import FILE [--data DIR]
  Takes in counts of fruit: CSV with the columns counted,place,stage,kg[,flowered]; stage is ripe,
  turning, green or flower. Counted again on the same day and place, it changes nothing.
dewpost import FILE [--data DIR] [--farm FILE]
  Takes in batches: the file the page gives out (batch,event,at,…), or CSV with the columns
  crop,trays,sown,place[,cut,kg,minutes], one row a batch. What is there already changes nothing.
dewpost import FILE [--data DIR]
  Takes in pickings: the file the page gives out, or CSV with the columns picked,place,kg[,crop,
  sorted_out_kg,minutes,walk_minutes,pickers,price,note]; picked is a time or a day. What is there
  already changes nothing.
  At a terminal each says how far it is; --quiet does not.`,
  farm: `dewpost farm check FILE | import FILE [--data DIR] | export FILE [--data DIR]
  Checks a farm file, puts it into the store, or writes the store's farm to a file.`,
  backup: `dewpost backup FILE [--data DIR]
  Copies everything into one file, also while the hub runs, and checks the copy.`,
  restore: `dewpost restore FILE [--data DIR]
  Puts a backup in place of what is there; the hub must not run. What was there is kept beside it.`,
  probe: `dewpost probe add NAME [--listen] [--data DIR]
  Makes an MQTT password for a probe, and prints it once. --listen: for a lamp, a siren or a second
  screen, which hears alarms, tasks and the heartbeat and may send nothing.`,
  person: `dewpost person code NAME [--data DIR]
  Makes a one-time code with which NAME sets a new password, for a last grower who forgot it.`,
};

/** What `--help` prints, for one verb or all. */
export const help = (verb?: string): string =>
  verb !== undefined && texts[verb] !== undefined
    ? texts[verb]
    : `dewpost: watches the places of a small garden and says what to do, by when and why

${Object.values(texts).join('\n\n')}

Exit codes: 0 done, 1 it failed, 2 wrong use.`;
