/** What of a refusal is needed to say it. */
interface Refused {
  readonly message: string;
  readonly issues?: readonly { readonly found: string; readonly expected: string }[];
}

/** Why a photo was not taken, and what to do; nothing else is lost by it. */
export function photoRefusal({ message, issues = [] }: Refused): string {
  const [first] = issues;
  const why = first ? `${first.found}; it takes ${first.expected}` : message.replace(/^photo: /, '');
  return `Not kept: ${why}. Nothing else is lost. Take it again, or choose another.`;
}

/** Why a kept photo was not read, and what to do. */
export function readingRefusal({ message, issues = [] }: Refused): string {
  const why = issues.length
    ? issues.map(({ found, expected }) => `${found}; it takes ${expected}`).join('. ')
    : message;
  return `Not read: ${why}. The photo and its corners are kept.`;
}
