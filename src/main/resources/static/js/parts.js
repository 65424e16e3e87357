'use strict';

// Sends one file in parts (Resumable Uploads for HTTP, see docs/formats.md). A part that is lost is sent again, and a
// file that was begun before goes on where it stopped. What is wrong for good is an Error whose message names it.
class PartedUpload {
  static #BEGINNING = 64 * 1024;
  static #SMALLEST = 64 * 1024;
  static #FIRST = 256 * 1024;
  static #GROWTH = 4;
  static #PART_SECONDS = 5; // so that little is lost with a part
  static #PAUSES = [1, 2, 4, 8, 15, 30]; // seconds
  static #SILENCE = 60; // seconds after which a line is taken for dead

  #file;
  #options;
  #address;
  #offset = 0; // up to here the server has what this file has
  #most = PartedUpload.#FIRST;
  #size = PartedUpload.#FIRST;
  #rate = 0; // bytes per second
  #losses = 0;
  #request = null;
  #wake = null;
  #stopped = false;

  // options: begin, the address that begins an upload; address, that of one that was begun, or null; token, the form's;
  // digest, the address of a library where the browser has no SHA-256 for us; tell(state, figures).
  constructor(file, options) {
    this.#file = file;
    this.#options = options;
    this.#address = options.address;
  }

  // The path of the page that tells what became of the file.
  async send() {
    let answer = this.#address ? await this.#look() : await this.#begin();
    while (!answer.complete) {
      const before = this.#offset;
      if (answer.offset !== this.#offset && !(await this.#compare())) answer = await this.#anew();
      else answer = await this.#next();
      if (this.#offset > before) this.#losses = 0;
    }
    return new URL(answer.location, location.href).pathname;
  }

  // Ends it. Whether what was kept could be discarded, too.
  async stop() {
    this.#stopped = true;
    this.#request?.abort();
    this.#wake?.();
    const answer = await this.#ask('DELETE', this.#address);
    return answer.status === 204 || answer.status === 404;
  }

  async #begin() {
    const beginning = await this.#bytes(0, PartedUpload.#BEGINNING);
    const bytes = await this.#bytes(0, this.#size);
    const address = new URL(this.#options.begin, location.href);
    address.searchParams.set('beginning', PartedUpload.#hex(await this.#digest(beginning)));
    const name = encodeURIComponent(this.#file.name).replace(/['()*]/g, (sign) => `%${sign.charCodeAt(0).toString(16)}`);
    const fields = {
      'Upload-Length': this.#file.size,
      'Content-Disposition': `inline; filename*=UTF-8''${name}`,
      'Content-Type': 'application/octet-stream',
    };
    const answer = await this.#keepTrying(await this.#part('POST', address.href, 0, bytes, fields));
    if (!answer.complete) this.#address = answer.location;
    this.#most = answer.most;
    return answer;
  }

  #look() {
    return this.#keepTrying(() => this.#ask('HEAD', this.#address));
  }

  async #next() {
    const from = this.#offset;
    const bytes = await this.#bytes(from, from + Math.min(this.#size, this.#most));
    const fields = {'Upload-Offset': from, 'Content-Type': 'application/partial-upload'};
    const answer = await this.#keepTrying(await this.#part('PATCH', this.#address, from, bytes, fields), () => this.#ask('HEAD', this.#address));
    this.#most = answer.most;
    // Someone else's request is at work on it, or the part was damaged on its way.
    if (answer.status === 409 && answer.offset === from && !answer.complete) await this.#pause('busy');
    return answer;
  }

  // Whether what is there is the beginning of this file: nobody may make one document of two versions of a file.
  async #compare() {
    const answer = await this.#keepTrying(() => this.#ask('GET', this.#address));
    for (const part of answer.complete ? [] : JSON.parse(answer.text).parts) {
      const end = part.startByte + part.sizeBytes;
      if (end <= this.#offset) continue;
      this.#tell('comparing', part.startByte);
      const bytes = await this.#bytes(part.startByte, end);
      if (PartedUpload.#hex(await this.#digest(bytes)) !== part.sha256) return false;
      this.#offset = end;
    }
    return true;
  }

  async #anew() {
    if (this.#options.address) throw new Error('other');
    await this.#ask('DELETE', this.#address);
    this.#address = null;
    this.#offset = 0;
    return this.#begin();
  }

  // How to send a part; the digest is reckoned once.
  async #part(method, address, from, bytes, fields) {
    const end = from + bytes.byteLength;
    const digest = btoa(String.fromCharCode(...new Uint8Array(await this.#digest(bytes))));
    return async () => {
      const began = performance.now();
      this.#tell('sending', from);
      const answer = await this.#ask(
        method,
        address,
        {...fields, 'Upload-Complete': end === this.#file.size ? '?1' : '?0', 'Content-Digest': `sha-256=:${digest}:`},
        bytes,
        (loaded) => this.#tell(end === this.#file.size && loaded === bytes.byteLength ? 'finishing' : 'sending', from + loaded),
      );
      if (answer.status === 201 || answer.status === 204) {
        this.#offset = end;
        this.#pace(bytes.byteLength, (performance.now() - began) / 1000);
      }
      return answer;
    };
  }

  #pace(bytes, seconds) {
    const rate = bytes / Math.max(seconds, 0.001);
    this.#rate = this.#rate === 0 ? rate : (this.#rate + rate) / 2;
    const fits = Math.min(rate * PartedUpload.#PART_SECONDS, this.#size * PartedUpload.#GROWTH);
    this.#size = Math.round(Math.max(PartedUpload.#SMALLEST, fits));
  }

  // Answers that say to try again are not taken for one; afterwards, if given, is what is asked instead of the first.
  async #keepTrying(ask, afterwards = ask) {
    let answer = await ask();
    while (answer.status === 0 || answer.status >= 500) {
      this.#goesOn();
      this.#size = Math.max(PartedUpload.#SMALLEST, Math.round(this.#size / 2));
      await this.#pause(navigator.onLine ? 'lost' : 'offline');
      answer = await afterwards();
    }
    this.#goesOn();
    const standing = answer.offset !== null && (answer.status < 300 || answer.status === 409);
    if (!standing) throw this.#refusal(answer);
    return answer;
  }

  #goesOn() {
    if (this.#stopped) throw new Error('stopped');
  }

  #refusal(answer) {
    if (answer.signIn || answer.status === 401) return new Error('signed-out');
    if (answer.status === 404 && this.#address) return new Error('gone');
    if (answer.status === 413) return new Error('too-large');
    return new Error('refused', {cause: answer.text});
  }

  async #pause(state) {
    const seconds = PartedUpload.#PAUSES[Math.min(this.#losses++, PartedUpload.#PAUSES.length - 1)];
    this.#tell(state, this.#offset, seconds);
    await new Promise((resolve) => {
      this.#wake = resolve;
      window.addEventListener('online', resolve, {once: true});
      setTimeout(resolve, seconds * 1000);
    });
    this.#goesOn();
  }

  #tell(state, sent, seconds = 0) {
    if (!this.#stopped) this.#options.tell(state, {sent, seconds, rate: this.#rate, begun: this.#address !== null});
  }

  async #bytes(from, to) {
    try {
      return await this.#file.slice(from, to).arrayBuffer();
    } catch {
      throw new Error('changed');
    }
  }

  // Browsers keep their own SHA-256 from pages that came without TLS.
  async #digest(bytes) {
    if (crypto.subtle) return crypto.subtle.digest('SHA-256', bytes);
    if (!window.sha256) await PartedUpload.#script(this.#options.digest);
    return window.sha256.arrayBuffer(bytes);
  }

  // One request. Status 0 if there was no answer.
  #ask(method, address, fields = {}, body = null, progress = null) {
    return new Promise((resolve) => {
      const request = new XMLHttpRequest();
      let silence;
      const listen = () => {
        clearTimeout(silence);
        silence = setTimeout(() => request.abort(), PartedUpload.#SILENCE * 1000);
      };
      request.upload.addEventListener('progress', (event) => {
        listen();
        progress?.(event.loaded);
      });
      request.addEventListener('loadend', () => {
        clearTimeout(silence);
        resolve(PartedUpload.#read(request));
      });
      request.open(method, address);
      for (const [name, value] of Object.entries(fields)) request.setRequestHeader(name, value);
      request.setRequestHeader('X-XSRF-TOKEN', this.#options.token);
      request.send(body);
      this.#request = request;
      listen();
    });
  }

  static #read(request) {
    const number = (field) => (field === null ? null : Number(field));
    return {
      status: request.status,
      text: request.responseText,
      signIn: request.responseURL !== '' && new URL(request.responseURL).pathname.endsWith('/sign-in'),
      location: request.getResponseHeader('Location'),
      offset: number(request.getResponseHeader('Upload-Offset')),
      complete: request.getResponseHeader('Upload-Complete') === '?1',
      most: number(/max-append-size=(\d+)/.exec(request.getResponseHeader('Upload-Limit') ?? '')?.[1] ?? null),
    };
  }

  static #hex(digest) {
    return [...new Uint8Array(digest)].map((byte) => byte.toString(16).padStart(2, '0')).join('');
  }

  static #script(address) {
    return new Promise((resolve, reject) => {
      const script = document.createElement('script');
      script.src = address;
      script.addEventListener('load', resolve);
      script.addEventListener('error', () => reject(new Error('refused')));
      document.head.append(script);
    });
  }
}
