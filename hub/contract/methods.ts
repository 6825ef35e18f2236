import { z } from 'zod';

/** A number that stands in a formula, as the code has it, and what is said of it there. */
export const methodConstant = z.object({ name: z.string(), value: z.string(), words: z.string() });

/** How one formula or rule works, in the words that stand beside its code. */
export const method = z.object({
  name: z.string(),
  /** Folder of rules/ it lives in. */
  folder: z.string(),
  /** Path and first line, for whoever wants to read the code itself. */
  file: z.string(),
  line: z.number(),
  /** Paragraphs. */
  words: z.array(z.string()),
  params: z.array(z.object({ name: z.string(), words: z.string() })),
  returns: z.string().nullable(),
  /** What it refuses. */
  throws: z.array(z.string()),
  constants: z.array(methodConstant),
  /** Where it comes from; `of` names the formula it is built on when that one tells the source. */
  sources: z.array(z.object({ words: z.string(), of: z.string().nullable() })),
  /** Formulas it is built on, and those built on it. */
  uses: z.array(z.string()),
  usedBy: z.array(z.string()),
});

export const methodName = z.object({ name: z.string().min(1).max(100) });

export type Method = z.infer<typeof method>;
export type MethodConstant = z.infer<typeof methodConstant>;
