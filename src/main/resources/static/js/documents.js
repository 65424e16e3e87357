'use strict';

// Sends chosen files one after the other, in parts. The forms work without this. Their texts come with them, in data
// attributes of the page's section for sending.
const sender = document.getElementById('send');
if (sender) {
  const form = sender.querySelector('form.sending');
  const input = form.elements.file;
  const button = form.querySelector('button[type=submit]');
  const list = form.querySelector('.sending-list');
  const drop = form.querySelector('.drop');
  const texts = form.dataset;
  let sending = false;

  drop.hidden = false;
  form.addEventListener('dragover', (event) => {
    event.preventDefault();
    drop.classList.add('over');
  });
  form.addEventListener('dragleave', () => drop.classList.remove('over'));
  form.addEventListener('drop', (event) => {
    event.preventDefault();
    drop.classList.remove('over');
    if (sending || event.dataTransfer.files.length === 0) return;
    input.files = event.dataTransfer.files;
    form.requestSubmit();
  });

  form.addEventListener('submit', (event) => {
    if (input.files.length === 0) return;
    event.preventDefault();
    if (!sending) sendAll([...input.files]);
  });
  window.addEventListener('beforeunload', (event) => {
    if (sending) event.preventDefault();
  });

  const offerToGoOn = () => {
    for (const one of document.querySelectorAll('.go-on')) one.hidden = false;
    for (const one of document.querySelectorAll('.without-script')) one.hidden = true;
  };
  offerToGoOn();
  document.addEventListener('refreshed', offerToGoOn);
  document.addEventListener('change', (event) => {
    const unfinished = event.target.closest('.unfinished');
    const [file] = (unfinished && event.target.files) || [];
    if (file && !sending) goOn(unfinished, file);
  });

  async function sendAll(files) {
    busy(true);
    list.replaceChildren();
    list.hidden = false;
    const rows = files.map((file) => row(list, file));
    const unsent = new DataTransfer();
    let answer = null;
    for (const [at, file] of files.entries()) {
      const begin = new URL(texts.begin, location.href);
      begin.searchParams.set('describes', form.elements.describes.value);
      if (answer) begin.searchParams.set('delivery', answer.split('/').pop());
      const outcome = await send(file, rows[at], {begin: begin.href, address: null});
      if (outcome) link(rows[at], (answer = outcome));
      else unsent.items.add(file);
    }
    busy(false);
    if (unsent.files.length === 0) location.assign(answer);
    else input.files = unsent.files;
  }

  async function goOn(unfinished, file) {
    const place = unfinished.querySelector('.sending-list');
    place.replaceChildren();
    place.hidden = false;
    const item = row(place, file);
    if (file.name !== unfinished.dataset.name || file.size !== Number(unfinished.dataset.size)) {
      fail(item, texts.wrongFile.replace('{name}', unfinished.dataset.name).replace('{all}', size(Number(unfinished.dataset.size))));
      return;
    }
    busy(true);
    const answer = await send(file, item, {begin: null, address: unfinished.dataset.address});
    busy(false);
    if (answer) location.assign(answer);
  }

  function busy(now) {
    sending = now;
    button.disabled = now;
    button.setAttribute('aria-busy', now); // the page doesn’t refresh itself meanwhile
    form.querySelector('.may-leave').hidden = !now;
    for (const again of document.querySelectorAll('.go-on input')) again.disabled = now;
  }

  function row(place, file) {
    const item = form.querySelector('template').content.cloneNode(true).firstElementChild;
    item.querySelector('.name').textContent = file.name;
    item.querySelector('progress').setAttribute('aria-label', file.name);
    place.append(item);
    return item;
  }

  function link(row, address) {
    const name = row.querySelector('.name');
    const link = document.createElement('a');
    link.href = address;
    link.textContent = name.textContent;
    name.replaceChildren(link);
  }

  // The path of the page that tells what became of the file, or null if it did not get there.
  async function send(file, row, where) {
    if (file.size > Number(texts.most)) return fail(row, texts.tooLarge);
    if (file.size === 0) return fail(row, texts.empty);
    const upload = new PartedUpload(file, {
      ...where,
      token: form.elements._csrf.value,
      digest: texts.digest,
      tell: (state, figures) => show(row, file, state, figures),
    });
    const stop = row.querySelector('.stop');
    stop.addEventListener('click', async () => fail(row, (await upload.stop()) ? texts.stopped : texts.stoppedKept));
    try {
      return await upload.send();
    } catch (failure) {
      return fail(row, texts[camel(failure.message)] ?? reason(failure.cause));
    } finally {
      stop.hidden = true;
    }
  }

  function show(row, file, state, {sent, seconds, rate, begun}) {
    row.querySelector('progress').value = sent / file.size;
    row.querySelector('.stop').hidden = !begun;
    const moving = state === 'sending' && rate > 0;
    row.querySelector('.told').textContent = (moving ? texts.underWay : texts.sent)
      .replace('{sent}', size(Math.min(sent, file.size)))
      .replace('{all}', size(file.size))
      .replace('{rate}', size(rate))
      .replace('{left}', moving ? left((file.size - sent) / rate) : '');
    // What is read out loud changes with the state only, not with each figure.
    const said = row.querySelector('.state');
    const text = texts[camel(state)].replace('{seconds}', seconds);
    if (said.textContent !== text) said.textContent = text;
  }

  function left(seconds) {
    return seconds < 60 ? texts.leftSoon : texts.left.replace('{minutes}', Math.ceil(seconds / 60));
  }

  function fail(row, text) {
    row.querySelector('.state').textContent = text;
    row.classList.add('error');
    return null;
  }

  // What the server's answer says: the sentence of a page, or the title of a problem.
  function reason(answer) {
    if (!answer) return texts.unknown;
    try {
      return JSON.parse(answer).title;
    } catch {
      const page = new DOMParser().parseFromString(answer, 'text/html');
      const said = [...page.querySelectorAll('#sentence, #next')].map((one) => one.textContent.trim());
      return said.join(' ') || texts.unknown;
    }
  }

  function camel(state) {
    return state.replace(/-./g, (pair) => pair[1].toUpperCase());
  }

  function size(bytes) {
    const units = ['B', 'kB', 'MB', 'GB'];
    let value = bytes;
    let unit = 0;
    while (value >= 1000 && unit < units.length - 1) {
      value /= 1000;
      unit++;
    }
    return `${unit === 0 ? Math.round(value) : value < 999.5 ? value.toPrecision(3) : Math.round(value)} ${units[unit]}`;
  }
}
