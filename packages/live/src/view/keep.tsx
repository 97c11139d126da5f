import type { VNode } from 'preact';
import { useState } from 'preact/hooks';
import type { OfPage } from './session.js';

/** Where the server takes a site file to be written beside the original; a page from the disk has none. */
const savePlace = document.documentElement.dataset.save;

/** What is done with the present set-up under a name: pinned, or saved as a variant of the site file. */
export function Keep({ session, state }: OfPage): VNode {
  const [name, setName] = useState('');
  const [said, setSaid] = useState('');
  const named = name.trim();
  const cannot = named === '' || Object.keys(state.change).length === 0 || state.refused !== null;
  const fileName = session.handOver.file.replace(/(\.ya?ml)?$/i, (ending) => ` ${fileSafe(named)}${ending || '.yaml'}`);
  const download = async () => {
    const url = URL.createObjectURL(new Blob([await session.saved(named)], { type: 'application/yaml' }));
    const link = document.createElement('a');
    link.href = url;
    link.download = fileName;
    link.click();
    setTimeout(() => URL.revokeObjectURL(url), 10_000);
    setSaid(`Saved as ${fileName}, with the variant "${named}".`);
  };
  const writeBeside = async () => {
    const answer = await fetch(savePlace!, {
      method: 'POST',
      headers: { 'Content-Type': 'application/json' },
      body: JSON.stringify({ name: fileName, text: await session.saved(named) }),
    });
    setSaid(await answer.text());
  };
  return (
    <form
      class="pin"
      onSubmit={(event) => {
        event.preventDefault();
        session.pin(named);
        setSaid('');
      }}
    >
      <label for="keep-name">Name of this set-up</label>
      <input
        id="keep-name"
        value={name}
        maxLength={60}
        placeholder="two more strings"
        onInput={(event) => setName(event.currentTarget.value)}
      />
      <button type="submit" disabled={named === '' || session.presentPin !== null || state.refused !== null}>
        Pin it
      </button>
      <button type="button" id="save" disabled={cannot} onClick={() => void download()}>
        Save as a variant
      </button>
      {savePlace !== undefined && (
        <button type="button" id="save-beside" disabled={cannot} onClick={() => void writeBeside()}>
          Write beside the original
        </button>
      )}
      <p role="status" class="said">
        {said}
      </p>
    </form>
  );
}

const fileSafe = (name: string): string => name.replace(/[^\p{L}\p{N}]+/gu, '-').replace(/^-+|-+$/g, '') || 'variant';
