import { z } from 'zod';
import { time } from './terms.ts';

// Who may do what. A grower may do everything; a helper reads the pages, answers tasks and enters
// what was done.

export const role = z.enum(['grower', 'helper']);

/** Shown and kept as it was typed, in one form of Unicode; never a control character. */
export const personName = z
  .string()
  .normalize('NFC')
  .trim()
  .min(1)
  .max(60)
  .regex(/^[^\p{C}\p{Zl}\p{Zp}]+$/u, 'expected letters, without control characters');
const newPassword = z.string().min(10).max(200);
const code = z.string().min(1).max(40);

export const who = z.object({
  /** False until the hub was claimed with its one-time code. */
  claimed: z.boolean(),
  /** True when nobody needs to sign in (a hub that listens on this machine only). */
  open: z.boolean(),
  name: z.string().nullable(),
  role: role.nullable(),
});
export const claim = z.strictObject({ code, name: personName, password: newPassword });
export const signIn = z.strictObject({
  name: personName,
  password: z.string().min(1).max(200),
});
/** With a code that a grower made: for somebody new, or to set a new password. */
export const join = z.strictObject({ code, name: personName, password: newPassword });
export const changePassword = z.strictObject({
  password: z.string().min(1).max(200),
  newPassword,
});

export const person = z.object({
  name: z.string(),
  role,
  /** To the hour. */
  seenAt: time.nullable(),
});
export const pendingCode = z.object({
  /** Names it without telling it. */
  id: z.string(),
  role,
  /** Whose new password it is for; null for somebody new. */
  name: z.string().nullable(),
  until: time,
});
export const people = z.object({ people: z.array(person), codes: z.array(pendingCode) });
export const inviteSomebody = z.strictObject({ role });
/** Shown this once: the hub keeps only a hash. */
export const madeCode = z.object({ code: z.string(), ...pendingCode.shape });
export const personParam = z.object({ name: personName });
export const codeParam = z.object({ id: z.string().regex(/^[0-9a-f]{12}$/, 'expected 12 digits') });

export type Role = z.infer<typeof role>;
export type Who = z.infer<typeof who>;
export type Person = z.infer<typeof person>;
export type PendingCode = z.infer<typeof pendingCode>;
export type People = z.infer<typeof people>;
export type MadeCode = z.infer<typeof madeCode>;
