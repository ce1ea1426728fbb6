import { useRef } from 'react';

/**
 * A button that asks for a file of this device.
 * @param name    what kind of file, to a screen reader: "Job file"
 * @param accept  kinds and endings that the chooser offers, as the browser's `accept` has them
 */
export function FileButton(props: {
  readonly words: string;
  readonly name: string;
  readonly accept: string;
  readonly onFile: (file: File) => void;
}) {
  const input = useRef<HTMLInputElement>(null);
  return (
    <>
      <button type="button" className="third" onClick={() => input.current?.click()}>
        {props.words}
      </button>
      <input
        ref={input}
        type="file"
        accept={props.accept}
        hidden
        aria-label={props.name}
        onChange={(event) => {
          const file = event.target.files?.[0];
          // The same file may be chosen again.
          event.target.value = '';
          if (file) props.onFile(file);
        }}
      />
    </>
  );
}
