import { useEffect, useState } from 'react';
import { placeWords } from '../../../shop/order/machine-draft.ts';
import { Refusing, sentText } from '../keep/server.ts';

/** What the shop says of a machine as it is being written. */
export type MachineChecked =
  | { readonly is: 'looking' }
  | { readonly is: 'right'; readonly steps: number }
  | { readonly is: 'wrong'; readonly issues: readonly { readonly where: string; readonly what: string }[] }
  | { readonly is: 'out of reach' };

const pause_ms = 350;

/** Has the shop look at a machine's text whenever its writing pauses. */
export function useChecked(text: string): MachineChecked {
  const [state, set] = useState<MachineChecked>({ is: 'looking' });
  useEffect(() => {
    let current = true;
    const look = async () => {
      const found = await checkMachine(text);
      if (current) set(found);
    };
    const timer = setTimeout(() => void look(), pause_ms);
    return () => {
      current = false;
      clearTimeout(timer);
    };
  }, [text]);
  return state;
}

/** The machine that a text is, as far as it is JSON at all. */
function machineIn(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return undefined;
  }
}

async function checkMachine(text: string): Promise<MachineChecked> {
  try {
    const { order } = await sentText<{ order: readonly string[] }>('/api/machines/check', text);
    return { is: 'right', steps: order.length };
  } catch (failure) {
    if (!(failure instanceof Refusing)) return { is: 'out of reach' };
    const issues = failure.refusal.issues ?? [{ path: '', found: failure.message, expected: 'a machine' }];
    const machine = machineIn(text);
    return {
      is: 'wrong',
      issues: issues.map(({ path, found, expected }) => ({
        where: placeWords(machine, path),
        what: `${found}; expected ${expected}`,
      })),
    };
  }
}
