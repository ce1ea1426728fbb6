import { useEffect, useId, useState } from 'react';
import { Wrong } from '../frame/notice.tsx';
import { UnderWay } from '../frame/under-way.tsx';
import type { Sending } from './sending.ts';

/** Camera or file; then whether the shop has it. */
export function ChoosePhoto(props: {
  readonly pad: string;
  readonly sending: Sending;
  readonly onStop: () => void;
  readonly onSend: (photo: Blob) => void;
}) {
  const { pad, sending, onStop, onSend } = props;
  return (
    <>
      <div>
        <p className="say">
          Photograph the blue on the <b>{pad}</b> from straight above it, the whole face in the photo and a
          little of the casting round it.
        </p>
        <ul className="lines quiet">
          <li>Fill the frame: 9 pixels a mm are good, below 5 spots run together.</li>
          <li>Step aside until no lamp mirrors in the metal. Hold still.</li>
          <li>Lay the corner card beside it, in the plane of the face, if you have one.</li>
        </ul>
        <p className="quiet">
          JPEG is best. A photo that cannot be picked is HEIC: in the phone’s settings for its camera, under
          formats, choose “most compatible”, or export it as JPEG.
        </p>
      </div>
      <div>
        <SendingWords sending={sending} onStop={onStop} onSend={onSend} />
        {sending.is === 'none' || sending.is === 'refused' ? null : <Waiting photo={sending.photo} />}
      </div>
    </>
  );
}

/**
 * Kinds that are taken. HEIC is not among them on purpose: a phone that keeps its photos so hands over a JPEG where the page asks
 * for one, and a HEIC where the page takes any picture.
 */
const taken = 'image/jpeg,image/png,image/webp,image/tiff,.jpg,.jpeg,.png,.webp,.tif,.tiff';

/** A way to a photo: by the camera where there is one, or from a file. */
export function PhotoInput(props: {
  readonly words: string;
  readonly camera?: boolean;
  readonly primary?: boolean;
  readonly onPhoto: (photo: Blob) => void;
}) {
  const { words, camera, primary, onPhoto } = props;
  const id = useId();
  return (
    <div className="photo-input">
      <input
        id={id}
        type="file"
        accept={camera ? 'image/jpeg' : taken}
        className="hidden"
        {...(camera ? { capture: 'environment' as const } : {})}
        onChange={(event) => {
          const [photo] = event.target.files ?? [];
          if (photo) onPhoto(photo);
          // The same file may be chosen again.
          event.target.value = '';
        }}
      />
      <label htmlFor={id} className={primary ? 'go' : 'third'}>
        {words}
      </label>
    </div>
  );
}

const SendingWords = (props: {
  readonly sending: Sending;
  readonly onStop: () => void;
  readonly onSend: (photo: Blob) => void;
}) => {
  const { sending, onStop, onSend } = props;
  switch (sending.is) {
    case 'refused':
      return <Wrong role="alert">{sending.why}</Wrong>;
    case 'sending':
      return <UnderWay words="On its way to the shop’s file." share={sending.share} onStop={onStop} />;
    case 'waiting':
      return (
        <UnderWay
          words={`The photo waits on this phone: ${sending.why ?? 'the shop is out of reach'}. It is sent by itself; nothing is lost.`}
          stop="Do not send it"
          onStop={onStop}
        />
      );
    case 'stopped':
      return (
        <>
          <p role="status">Stopped. The shop has not kept this photo; it goes when you leave this screen.</p>
          <button type="button" className="third" onClick={() => onSend(sending.photo)}>
            Send it after all
          </button>
        </>
      );
    default:
      return null;
  }
};

/** A photo that only this phone has. */
function Waiting({ photo }: { readonly photo: Blob }) {
  const [address, setAddress] = useState<string>();
  useEffect(() => {
    const made = URL.createObjectURL(photo);
    setAddress(made);
    setShows(true);
    return () => URL.revokeObjectURL(made);
  }, [photo]);
  const [shows, setShows] = useState(true);
  // What is no picture, or none that this browser can show, is not drawn as a broken one.
  return address === undefined || !shows ? null : (
    <img className="waiting-photo" src={address} alt="Waits to be sent" onError={() => setShows(false)} />
  );
}
