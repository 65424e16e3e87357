'use strict';

// Sends each file in a request of its own, so that a lost connection costs one file and not all of them. The form
// works without this. Its texts come with it, in data attributes.
const form = document.querySelector('form.sending');
if (form) {
  const input = form.elements.file;
  const button = form.querySelector('button[type=submit]');
  const list = form.querySelector('.sending-list');
  const drop = form.querySelector('.drop');
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

  async function sendAll(files) {
    sending = true;
    button.disabled = true;
    list.replaceChildren();
    list.hidden = false;
    const rows = files.map(row);
    const unsent = new DataTransfer();
    let answer = null;
    for (const [at, file] of files.entries()) {
      const outcome = await send(file, rows[at], answer && answer.split('/').pop());
      if (outcome) link(rows[at], (answer = outcome));
      else unsent.items.add(file);
    }
    sending = false;
    button.disabled = false;
    if (unsent.files.length === 0) location.assign(answer);
    else input.files = unsent.files;
  }

  function row(file) {
    const item = form.querySelector('template').content.cloneNode(true).firstElementChild;
    item.querySelector('.name').textContent = file.name;
    list.append(item);
    return item;
  }

  function link(row, address) {
    const name = row.querySelector('.name');
    const link = document.createElement('a');
    link.href = address;
    link.textContent = name.textContent;
    name.replaceChildren(link);
  }

  // The address of the page that tells what became of the file, or null if it did not get there.
  function send(file, row, delivery) {
    const told = row.querySelector('.told');
    const fail = (text) => {
      told.textContent = text;
      row.classList.add('error');
      return null;
    };
    if (file.size > Number(form.dataset.most)) return fail(form.dataset.tooLarge);
    if (file.size === 0) return fail(form.dataset.empty);
    const body = new FormData(form);
    body.delete('file');
    if (delivery) body.append('delivery', delivery);
    body.append('file', file);
    return new Promise((resolve) => {
      const request = new XMLHttpRequest();
      request.upload.addEventListener('progress', (event) => {
        row.querySelector('progress').value = event.loaded / event.total;
        told.textContent = form.dataset.sent
          .replace('{sent}', size(Math.min(event.loaded, file.size)))
          .replace('{all}', size(file.size));
      });
      request.addEventListener('load', () => {
        const answer = new URL(request.responseURL);
        if (request.status === 200 && answer.pathname.includes('/documents/deliveries/')) resolve(answer.pathname);
        else if (answer.pathname.endsWith('/sign-in')) location.assign(answer);
        else resolve(fail(reason(request.responseText)));
      });
      request.addEventListener('error', () => resolve(fail(form.dataset.lost)));
      request.open('POST', form.action);
      request.setRequestHeader('Accept', 'text/html');
      request.send(body);
    });
  }

  // What the server's page says: the form's error, or the sentence of an error page.
  function reason(html) {
    const page = new DOMParser().parseFromString(html, 'text/html');
    const said = page.querySelector('#error-summary li') || page.querySelector('#sentence');
    return said ? said.textContent : form.dataset.lost;
  }

  function size(bytes) {
    const units = ['B', 'kB', 'MB', 'GB'];
    let value = bytes;
    let unit = 0;
    while (value >= 1000 && unit < units.length - 1) {
      value /= 1000;
      unit++;
    }
    return `${unit === 0 ? value : value.toPrecision(3)} ${units[unit]}`;
  }
}
