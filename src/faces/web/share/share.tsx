import './share.css';
import { useQueryClient } from '@tanstack/react-query';
import { useState } from 'react';
import type { Role } from '../../../contract/share.ts';
import type { Device } from '../../../shop/share/devices.ts';
import { clock, dayMonth } from '../frame/kept.tsx';
import { NotHere } from '../frame/not-here.tsx';
import { Caution } from '../frame/notice.tsx';
import { Segments } from '../frame/segments.tsx';
import { Top } from '../frame/top.tsx';
import { posted, Refusing } from '../keep/server.ts';
import { type Invited, roleWords, type Sharing, useSharing } from './ask.ts';
import { JoinForm } from './join.tsx';

/** Who may come into the workshop besides this machine: letting in, list, taking off the list. */
export function ShareScreen() {
  const { data, error } = useSharing();
  return (
    <>
      <Top title="Share" />
      <main className="page narrow">
        {data ? <ByPlace sharing={data} /> : <NotHere what="who is let in" failure={error} />}
      </main>
    </>
  );
}

function ByPlace({ sharing }: { readonly sharing: Sharing }) {
  if (!('secure' in sharing)) return <JoinForm />;
  if (!('devices' in sharing)) return <Mine {...sharing} />;
  if (sharing.addresses.length === 0)
    return (
      <>
        <p className="say">The workshop is on this machine only. No other device can reach it.</p>
        <p>
          To let phones and tablets of the shop in, stop it and start it with{' '}
          <code>npm start -- --share</code> or <code>waywright serve --share</code>.
        </p>
        <DeviceList devices={sharing.devices} />
      </>
    );
  return <Owner sharing={sharing} />;
}

function Owner({ sharing }: { readonly sharing: Extract<Sharing, { devices: unknown }> }) {
  const [role, setRole] = useState<Role>('writer');
  const [invited, setInvited] = useState<Invited & { readonly before: number }>();
  const [wrong, setWrong] = useState<string>();
  const invite = async () => {
    setWrong(undefined);
    try {
      const made = await posted<Invited>('/api/share/invitations', { role });
      setInvited({ ...made, before: sharing.devices.length });
    } catch (failure) {
      setWrong(failure instanceof Refusing ? failure.message : 'The shop is out of reach. Try again.');
    }
  };
  const isOpen = invited !== undefined && Date.parse(invited.ends) > Date.now();
  return (
    <>
      <p className="say">
        Reached on this network at {sharing.addresses.join(' and ')}. Each phone or tablet is let in once, by
        an invitation that you make here.
      </p>
      <Segments
        label="The device may"
        choices={[
          { value: 'writer', words: 'look and write' },
          { value: 'reader', words: 'look only' },
        ]}
        chosen={role}
        onChoose={(next) => {
          setRole(next);
          setInvited(undefined);
        }}
      />
      <button type="button" className="go small" onClick={() => void invite()}>
        {isOpen ? 'Make another invitation' : 'Let a device in'}
      </button>
      {wrong === undefined ? null : <p className="wrong">{wrong}</p>}
      {isOpen ? <Invitation invited={invited} /> : null}
      <DeviceList devices={sharing.devices} />
      <Cautions secure={sharing.secure} />
    </>
  );
}

function Invitation({ invited }: { readonly invited: Invited }) {
  return (
    <section className="invitation" aria-label="Invitation">
      {invited.links.map(({ link, address, qr }) => (
        <figure key={link}>
          <svg viewBox={`0 0 ${qr.size} ${qr.size}`} className="qr" shapeRendering="crispEdges">
            <title>QR code that leads to {address}</title>
            <rect width={qr.size} height={qr.size} className="qr-light" />
            <path d={qr.path} className="qr-dark" />
          </svg>
          <figcaption>Point the phone’s camera here, or open {address} on it and type</figcaption>
        </figure>
      ))}
      <p className="code num">{invited.code}</p>
      <p className="quiet">
        Good for one device, until {clock(invited.ends)}. It {roleWords[invited.role]}. Show it to nobody
        else: who has it is in.
      </p>
    </section>
  );
}

function DeviceList({ devices }: { readonly devices: readonly Device[] }) {
  const client = useQueryClient();
  const [asked, setAsked] = useState<string>();
  const [wrong, setWrong] = useState<string>();
  const remove = async (id: string) => {
    setWrong(undefined);
    setAsked(undefined);
    await posted(`/api/share/devices/${id}/remove`, {}).catch((failure: Error) =>
      setWrong(
        failure instanceof Refusing ? failure.message : 'The shop is out of reach. Nothing was changed.',
      ),
    );
    await client.invalidateQueries({ queryKey: ['share'] });
  };
  return (
    <section>
      <h2>Devices that are in</h2>
      {wrong === undefined ? null : <p className="wrong">{wrong}</p>}
      {devices.length === 0 ? <p className="quiet">None besides this machine.</p> : null}
      <ul className="rows">
        {devices.map(({ id, name, role, since, seen }) => (
          <li key={id} className="device-row">
            <span>
              <b>{name}</b>, {roleWords[role]}
              <small className="quiet seen">
                in since {dayMonth(since)}, last here {dayMonth(seen)} {clock(seen)}
              </small>
            </span>
            {asked === id ? (
              <button type="button" className="second" onClick={() => void remove(id)}>
                Yes, out at once
              </button>
            ) : (
              <button type="button" className="third" onClick={() => setAsked(id)}>
                Remove<span className="hidden"> {name}</span>
              </button>
            )}
          </li>
        ))}
      </ul>
    </section>
  );
}

const Cautions = ({ secure }: { readonly secure: boolean }) => (
  <section>
    <h2>Before you share</h2>
    {secure ? (
      <p>
        What passes between the devices and this machine is enciphered with your certificate. Phones keep the
        app itself too, and open it while this machine is off.
      </p>
    ) : (
      <Caution>
        What passes is not enciphered: anyone on the same network with the tools for it can read it and use a
        device’s key. Share only on a network whose users you trust, never on a guest network. With your own
        certificate (<span className="share-word">--cert</span> and <span className="share-word">--key</span>)
        it is enciphered.
      </Caution>
    )}
    {secure ? null : (
      <p>
        Without a certificate, browsers do not let a phone keep the app itself. A page that is open goes on
        taking readings and photos while the network is away and sends them when it is back; but do not close
        or reload it until then. If it was closed, nothing is lost: what was taken lies on the phone and is
        sent when the app is opened again with the shop in reach.
      </p>
    )}
  </section>
);

function Mine({ you, secure }: Extract<Sharing, { you: { is: 'device' } }>) {
  const client = useQueryClient();
  const leave = async () => {
    await posted('/api/share/leave', {}).catch(() => undefined);
    await client.invalidateQueries();
  };
  return (
    <>
      <p className="say">
        This device is in as “{you.name}” and {roleWords[you.role]}.
      </p>
      <p>Devices are let in and taken off the list at the machine that keeps the workshop.</p>
      <p className="quiet">
        {secure
          ? 'What passes is enciphered. The app opens on this device while the shop is out of reach.'
          : 'What passes is not enciphered. While the shop is out of reach, keep this page open: readings and photos wait here and are sent when it is back.'}
      </p>
      <button type="button" className="second" onClick={() => void leave()}>
        Leave the workshop
      </button>
    </>
  );
}
