import { Segments } from '../frame/segments.tsx';
import { Top } from '../frame/top.tsx';
import { changeSettings, useSettings } from '../keep/settings.ts';

/** How this phone shows things. Nothing here changes a job. */
export function SettingsScreen() {
  const { units, theme, leftHanded, buzz } = useSettings();
  return (
    <>
      <Top title="Settings" />
      <main className="page narrow">
        <p className="say">How this phone shows things. Nothing here changes a job.</p>
        <div className="field">
          <span className="label">Lengths</span>
          <Segments
            label="Lengths"
            choices={[
              { value: 'inch', words: 'thou and tenths' },
              { value: 'metric', words: 'mm and µm' },
            ]}
            chosen={units}
            onChoose={(value) => changeSettings({ units: value })}
          />
        </div>
        <div className="field">
          <span className="label">Light or dark</span>
          <Segments
            label="Light or dark"
            choices={[
              { value: 'as the phone', words: 'as the phone' },
              { value: 'light', words: 'light' },
              { value: 'dark', words: 'dark' },
            ]}
            chosen={theme}
            onChoose={(value) => changeSettings({ theme: value })}
          />
        </div>
        <div className="field">
          <span className="label">Menu and links on the side of</span>
          <Segments
            label="Menu and links on the side of"
            choices={[
              { value: 'right', words: 'the right thumb' },
              { value: 'left', words: 'the left thumb' },
            ]}
            chosen={leftHanded ? 'left' : 'right'}
            onChoose={(value) => changeSettings({ leftHanded: value === 'left' })}
          />
        </div>
        <div className="field">
          <span className="label">Buzz when an entry is kept, twice when it is refused</span>
          <Segments
            label="Buzz"
            choices={[
              { value: 'off', words: 'no buzz' },
              { value: 'on', words: 'buzz' },
            ]}
            chosen={buzz ? 'on' : 'off'}
            onChoose={(value) => changeSettings({ buzz: value === 'on' })}
          />
        </div>
      </main>
    </>
  );
}
