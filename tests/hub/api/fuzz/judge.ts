export type Answered = { readonly status: number; readonly body: string };

/** Longest refusal that still is one sentence for a screen; characters, ours. */
const LONGEST = 500;

/** What is wrong with an answer, whatever was asked; null when nothing is. */
export function faultIn({ status, body }: Answered, method: string): string | null {
  // 503 says that there is too much to do at once; nothing else beyond 499 is an answer.
  if (status >= 500 && status !== 503) return `status ${status}: ${body.slice(0, 300)}`;
  if (status < 200) return `status ${status}`;
  if (status < 400 || method === 'HEAD' || body === '') return null;
  let told: unknown;
  try {
    told = JSON.parse(body);
  } catch {
    return `status ${status} without JSON: ${body.slice(0, 300)}`;
  }
  const { error, ...rest } = told as { error?: unknown };
  if (typeof error !== 'string' || Object.keys(rest).length > 0)
    return `status ${status} without a sentence: ${body.slice(0, 300)}`;
  if (!/^Expected .+, got( .*)?$/u.test(error.replace(/[\u2028\u2029\r]/g, ' ')))
    return `not "Expected …, got …": ${error}`;
  return error.length > LONGEST ? `a sentence of ${error.length} characters` : null;
}
