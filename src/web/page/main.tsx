import { render } from 'preact';
import { App } from './app.js';
import './styles/base.css';
import './styles/ask.css';
import './styles/answer.css';
import './styles/why.css';

render(<App />, document.getElementById('page')!);
