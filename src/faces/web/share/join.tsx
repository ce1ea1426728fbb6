import './share.css';
import { useQueryClient } from '@tanstack/react-query';
import { useEffect, useState } from 'react';
import { useLocation } from 'wouter';
import { GoButton } from '../frame/go.tsx';
import { Top } from '../frame/top.tsx';
import { outbox } from '../keep/jobs.ts';
import { posted, Refusing } from '../keep/server.ts';

/** What stands behind the # of the link in a QR code. It goes nowhere but into the body of one request. */
const secretInLink = (): string => location.hash.slice(1);

/** A device that comes in for the first time. */
export const JoinScreen = () => (
  <>
    <Top title="Come in" />
    <main className="page narrow">
      <JoinForm />
    </main>
  </>
);

export function JoinForm() {
  const [secret] = useState(secretInLink);
  const [code, setCode] = useState('');
  const [name, setName] = useState('');
  const [wrong, setWrong] = useState<string>();
  const [, go] = useLocation();
  const client = useQueryClient();
  // Used once or not at all: it has no place in this browser's history.
  useEffect(() => {
    if (location.hash !== '') history.replaceState(history.state, '', location.pathname);
  }, []);
  const join = async () => {
    setWrong(undefined);
    if (name.trim() === '')
      return setWrong('Give this device a name, so that the shop knows it on its list.');
    const typed = secret === '' ? code.trim() : secret;
    if (typed === '') return setWrong('Type the code that the shop’s machine shows.');
    try {
      await posted('/api/join', { code: typed, name: name.trim() });
      await client.invalidateQueries();
      void outbox.deliver();
      go('/jobs');
    } catch (failure) {
      setWrong(failure instanceof Refusing ? failure.message : 'The shop is out of reach. Try again.');
    }
  };
  return (
    <form
      className="join"
      onSubmit={(event) => {
        event.preventDefault();
        void join();
      }}
    >
      <p className="say">
        {secret === ''
          ? 'Type the code that the page “Share” shows on the machine that keeps the workshop.'
          : 'You were invited into the workshop. Give this device a name and come in.'}
      </p>
      {secret === '' ? (
        <label className="field">
          <span className="label">Code</span>
          <input
            value={code}
            autoComplete="off"
            autoCapitalize="characters"
            spellCheck={false}
            placeholder="ABCD-2345"
            onChange={(event) => setCode(event.target.value)}
          />
        </label>
      ) : null}
      <label className="field">
        <span className="label">Name of this device</span>
        <input
          value={name}
          maxLength={60}
          autoComplete="off"
          placeholder="Tablet at the planer"
          onChange={(event) => setName(event.target.value)}
        />
      </label>
      {wrong === undefined ? null : (
        <p className="wrong" role="alert">
          {wrong}
        </p>
      )}
      <GoButton onPress={() => void join()}>Come in</GoButton>
    </form>
  );
}
