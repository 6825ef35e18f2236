import { chooseScheme, scheme, schemes } from '../scheme.ts';
import { words } from '../words.ts';

/** Light, dark or as the device: of this device alone. */
export function SchemeSwitch() {
  const text = words.frame.scheme;
  return (
    <fieldset class="scheme-switch">
      <legend>{text.label}</legend>
      {schemes.map((one) => (
        <label key={one}>
          <input
            type="radio"
            name="scheme"
            checked={scheme.value === one}
            onChange={() => chooseScheme(one)}
          />
          {text[one]}
        </label>
      ))}
    </fieldset>
  );
}
