/** A name that nothing else has. `crypto.randomUUID` is only there over https; this is there on the
 *  farm's own network as well. */
export const makeKey = () =>
  [...crypto.getRandomValues(new Uint8Array(16))]
    .map((byte) => byte.toString(16).padStart(2, '0'))
    .join('');
