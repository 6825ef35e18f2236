import { words } from '../words.ts';

/** What the marks of a strip mean. */
export function StripKey() {
  return (
    <details class="key">
      <summary>{words.strips.key}</summary>
      <ul>
        <li>
          <Sample>
            <path class="measured" d="M1 12L10 5L20 9L29 4" />
          </Sample>
          {words.strips.measured}
        </li>
        <li>
          <Sample>
            <path class="humidity" d="M1 5L10 11L20 6L29 10" />
          </Sample>
          {words.strips.humidityLine}
        </li>
        <li>
          <Sample>
            <path class="hatch" d="M2 14L14 2M9 14L21 2M16 14L28 2" />
            <rect class="wet-foot" x="0" y="13" width="30" height="3" />
          </Sample>
          {words.strips.wet}
        </li>
        <li>
          <Sample>
            <rect class="night" x="0" y="0" width="30" height="16" />
          </Sample>
          {words.strips.night}
        </li>
        <li>
          <Sample>
            <path class="fan" d="M1 4L29 2V14L1 6Z" />
            <path class="fan-middle" d="M1 5L29 8" />
          </Sample>
          {words.strips.fan}
        </li>
      </ul>
      <p>{words.strips.gap}</p>
    </details>
  );
}

function Sample({ children }: { children: preact.ComponentChildren }) {
  return (
    <svg class="sample" viewBox="0 0 30 16" width="30" height="16" aria-hidden="true">
      {children}
    </svg>
  );
}
