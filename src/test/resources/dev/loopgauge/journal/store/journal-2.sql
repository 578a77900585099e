--
-- PostgreSQL database dump
--

\restrict 7DBXU0WC8zcvP9KLfGtL7N6gXMAyIIZR3eWsEtnoHb9DIhkXxZsOOK0hXFJzGU7

-- Dumped from database version 15.18 (Debian 15.18-0+deb12u1)
-- Dumped by pg_dump version 15.18 (Debian 15.18-0+deb12u1)

SET statement_timeout = 0;
SET lock_timeout = 0;
SET idle_in_transaction_session_timeout = 0;
SET client_encoding = 'UTF8';
SET standard_conforming_strings = on;
SELECT pg_catalog.set_config('search_path', '', false);
SET check_function_bodies = false;
SET xmloption = content;
SET client_min_messages = warning;
SET row_security = off;

--
-- Name: journal_only_grows(); Type: FUNCTION; Schema: public; Owner: -
--

CREATE FUNCTION public.journal_only_grows() RETURNS trigger
    LANGUAGE plpgsql
    AS $$
BEGIN
  RAISE EXCEPTION 'the journal only grows';
END
$$;


SET default_tablespace = '';

SET default_table_access_method = heap;

--
-- Name: chain; Type: TABLE; Schema: public; Owner: -
--

CREATE TABLE public.chain (
    digest text NOT NULL,
    content text NOT NULL
);


--
-- Name: detail; Type: TABLE; Schema: public; Owner: -
--

CREATE TABLE public.detail (
    entry_id text NOT NULL,
    note text,
    setup text NOT NULL,
    document text NOT NULL,
    chain_name text,
    chain_digest text,
    backend text,
    output text,
    input text,
    card_rate_hz integer,
    block_size integer,
    capture_file text,
    capture_digest text,
    tool_version text NOT NULL,
    digest text NOT NULL
);


--
-- Name: entry; Type: TABLE; Schema: public; Owner: -
--

CREATE TABLE public.entry (
    "position" bigint NOT NULL,
    id text NOT NULL,
    at_ms bigint NOT NULL,
    zone text NOT NULL,
    show_name text NOT NULL,
    day_part text NOT NULL,
    path text,
    outcome text NOT NULL,
    delay_samples double precision,
    rate_hz integer,
    uncertainty_samples double precision,
    corrects text,
    standing text,
    CONSTRAINT entry_day_part_check CHECK ((day_part = ANY (ARRAY['before'::text, 'during'::text, 'after'::text]))),
    CONSTRAINT entry_standing_check CHECK ((standing = ANY (ARRAY['good'::text, 'bad'::text, 'undecided'::text, 'not-judged'::text])))
);


--
-- Name: entry_position_seq; Type: SEQUENCE; Schema: public; Owner: -
--

ALTER TABLE public.entry ALTER COLUMN "position" ADD GENERATED ALWAYS AS IDENTITY (
    SEQUENCE NAME public.entry_position_seq
    START WITH 1
    INCREMENT BY 1
    NO MINVALUE
    NO MAXVALUE
    CACHE 1
);


--
-- Name: journal_version; Type: TABLE; Schema: public; Owner: -
--

CREATE TABLE public.journal_version (
    installed_rank integer NOT NULL,
    version character varying(50),
    description character varying(200) NOT NULL,
    type character varying(20) NOT NULL,
    script character varying(1000) NOT NULL,
    checksum integer,
    installed_by character varying(100) NOT NULL,
    installed_on timestamp without time zone DEFAULT now() NOT NULL,
    execution_time integer NOT NULL,
    success boolean NOT NULL
);


--
-- Data for Name: chain; Type: TABLE DATA; Schema: public; Owner: -
--

INSERT INTO public.chain VALUES ('ea42ce48a5d083fd81c5921cbade7fd1603d8bec77b5b4934fa4c807154c61c2', 'chain: Hall
');
INSERT INTO public.chain VALUES ('c5c94abd1ea6063e0260dbbd6258af0791564a90dcae35b9213df4e8f6f3f571', '🎷 whole\udc00 the other half=1+1');
INSERT INTO public.chain VALUES ('e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855', '');
INSERT INTO public.chain VALUES ('9ee293f2054235e515fba84e13e26cecd0460d86d0bd92405341478a6cc5632b', '<script>alert(''x'')</script>"; DROP TABLE entry; --');
INSERT INTO public.chain VALUES ('a01971d0c7d317629c5ccb0a8941df635416d3c7b032d840ec4d29900ecf47f9', 'back\\slash \\u0000 \\nhalf \ud83d a pair=1+1');
INSERT INTO public.chain VALUES ('0acd9cdde7cdf17f533d7018bae4daeceecd002f128819f51872737649143e6f', '''single'' "double" `back`a‮b‏back\\slash \\u0000 \\n');
INSERT INTO public.chain VALUES ('ce20540e25dbec5dc238920109713d7a24f49ef5d602497325cd1527b81eb156', 'line
one	tab''single'' "double" `back`half \ud83d a pair');
INSERT INTO public.chain VALUES ('705693e4e7aa3691d9c045341dffa3a17a7b70295d3c0b56cb3d31342a8ec61a', '''single'' "double" `back`a‮b‏é é 中文');
INSERT INTO public.chain VALUES ('6f36d46b0ce020fa42eb02e8ff6b560123b2170a7c438b78fd301f930a92377e', 'line
one	tab"; DROP TABLE entry; --back\\slash \\u0000 \\n');
INSERT INTO public.chain VALUES ('1b5d699512517a547134de466d66a03ead194afaf64e9998699e20f4d56cf8c4', 'back\\slash \\u0000 \\nhalf \ud83d a pair"; DROP TABLE entry; --');


--
-- Data for Name: detail; Type: TABLE DATA; Schema: public; Owner: -
--

INSERT INTO public.detail VALUES ('12345678-9abc-4000-8000-000000000001', 'all as planned', 'clock-leader	desk
network-latency	1 ms
', '{"schema":1}', 'hall.yaml', 'ea42ce48a5d083fd81c5921cbade7fd1603d8bec77b5b4934fa4c807154c61c2', 'jack', 'rig', 'rig', 48000, 64, 'a.wav.gz', '00', '0.1.0', 'ef24d32576b1d6097536b9988cf5a66792ec4418fc9873d57e166eedc9f9459a');
INSERT INTO public.detail VALUES ('12345678-9abc-4000-8000-000000000002', 'all as planned', 'clock-leader	desk
network-latency	1 ms
', '{"schema":1}', 'hall.yaml', 'ea42ce48a5d083fd81c5921cbade7fd1603d8bec77b5b4934fa4c807154c61c2', 'jack', 'rig', 'rig', 48000, 64, 'a.wav.gz', '00', '0.1.0', 'c965b9f2d3a73a1b754c00b5938ac4de11715d22f28e4e6cd46857a0828a809b');
INSERT INTO public.detail VALUES ('910a2dec-8902-5cc1-beeb-8da1658eec67', NULL, 'half \ud83d a pair	\u0000\t\n[31ma‮b‏=1+1
', '\udc00 the other half🎷 whole', '<script>alert(''x'')</script>a‮b‏\u0000	
[31m', 'c5c94abd1ea6063e0260dbbd6258af0791564a90dcae35b9213df4e8f6f3f571', 'half \ud83d a pair', '', 'a‮b‏', 48000, 64, '"; DROP TABLE entry; --🎷 whole', '', '''single'' "double" `back`"; DROP TABLE entry; --', 'df488b198edc27a06bec87991c34239d335770f7795ea28a632d64c973b51f78');
INSERT INTO public.detail VALUES ('21af8cfd-4c4c-bee5-5360-00f4bd6ae8f8', '''single'' "double" `back`', '\udc00 the other half	<script>alert(''x'')</script>\u0000\t\n[31mline\none\ttab
	a‮b‏=1+1
', '''single'' "double" `back`🎷 whole', 'line
one	tab', 'e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855', 'a‮b‏line
one	tab=1+1', 'é é 中文"; DROP TABLE entry; --half \ud83d a pair', 'half \ud83d a pair=1+1line
one	tab', 48000, 64, '🎷 whole', '<script>alert(''x'')</script>=1+1', '', '7cb9fbac14f894b3f7e8bbf14088ca75ff5271cd9b0ce1733bf604ac088c8a04');
INSERT INTO public.detail VALUES ('96bf5d40-5151-ec53-aa3d-e53fbde4ae5b', '🎷 whole', '"; DROP TABLE entry; --	half \ud83d a pair''single'' "double" `back`
\udc00 the other halfback\\slash \\u0000 \\n	🎷 whole\u0000\t\n[31m=1+1
', '''single'' "double" `back`half \ud83d a pair', NULL, NULL, 'a‮b‏a‮b‏', '=1+1\udc00 the other half', '\u0000	
[31m''single'' "double" `back`', 48000, 64, NULL, NULL, '', 'aa7e837aa8516c03d1ec4593fd8356a879224dab49300abe422ed36aae3b1ffb');
INSERT INTO public.detail VALUES ('3b2682ca-23c4-ff68-49e9-2cf9955c4d96', NULL, '	<script>alert(''x'')</script>
', '', '''single'' "double" `back`', '9ee293f2054235e515fba84e13e26cecd0460d86d0bd92405341478a6cc5632b', '<script>alert(''x'')</script>', '"; DROP TABLE entry; --', '', 48000, 64, '\udc00 the other half', '', 'a‮b‏', 'bbc966c1f945309c2fb10d429494c78c62f3da6f7f1a2763600b4bab6c0a8a8f');
INSERT INTO public.detail VALUES ('27455ad9-65bb-6738-fb47-3b97f0ac3990', 'a‮b‏=1+1', '', '', NULL, NULL, '\u0000	
[31mé é 中文', 'half \ud83d a pair', '🎷 wholea‮b‏', 48000, 64, NULL, NULL, 'line
one	tab', '8cd112e9ee708041995eafc421689872947479964e99b20dd3551247121fbc30');
INSERT INTO public.detail VALUES ('590aae46-4f2c-3718-767d-0e5c3c13df0a', NULL, '	
', 'half \ud83d a pair', '=1+1''single'' "double" `back`', 'e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855', NULL, NULL, NULL, NULL, NULL, 'half \ud83d a pair', '<script>alert(''x'')</script><script>alert(''x'')</script><script>alert(''x'')</script>', 'a‮b‏half \ud83d a pair=1+1', 'e19bce6a0da72583711554d0b2a201a59c675cdc776eb3aa4e1774e03a5c59d4');
INSERT INTO public.detail VALUES ('c501c320-455f-e5ee-2454-0d94fe0993de', NULL, '', '<script>alert(''x'')</script>"; DROP TABLE entry; --', NULL, NULL, NULL, NULL, NULL, NULL, NULL, '🎷 whole\udc00 the other halfhalf \ud83d a pair', '', '', '10c5a4c4ac3b00190d3f9fa325e906fec6f1d3b94cc94dee8b09c5c2d3649e01');
INSERT INTO public.detail VALUES ('296deeed-f961-1dea-b3b1-bbb3f5ff6aee', NULL, '"; DROP TABLE entry; --	🎷 whole"; DROP TABLE entry; --
', '', 'line
one	tab', 'e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855', NULL, NULL, NULL, NULL, NULL, NULL, NULL, '<script>alert(''x'')</script>\udc00 the other halfline
one	tab', '6abd54734b7cff11efb88a04f7b34904eb7021bf98feccf8ef6d09b504bbaeda');
INSERT INTO public.detail VALUES ('ce62a526-4678-1d2d-c36c-5f3a9fa8ae35', '🎷 wholeback\\slash \\u0000 \\n', '	"; DROP TABLE entry; --
\udc00 the other half\u0000\t\n[31mé é 中文	
', '\udc00 the other half\udc00 the other half', '', 'a01971d0c7d317629c5ccb0a8941df635416d3c7b032d840ec4d29900ecf47f9', NULL, NULL, NULL, NULL, NULL, '"; DROP TABLE entry; --', 'é é 中文', '', 'dc457fbfff7d13da6bf45d668bfe2bf060a47aaba638a3b5cad1139592a6315c');
INSERT INTO public.detail VALUES ('f02d453a-0b26-13f3-32af-04e4bc58a7e1', NULL, 'é é 中文	é é 中文\u0000\t\n[31m
a‮b‏	<script>alert(''x'')</script>
', '', NULL, NULL, NULL, NULL, NULL, NULL, NULL, '"; DROP TABLE entry; --\udc00 the other half\u0000	
[31m', 'half \ud83d a pair''single'' "double" `back`', '\udc00 the other half"; DROP TABLE entry; --\u0000	
[31m', '87efcb9f457a21d5a30788eebaefdebac4623fdcf59d0ab6b81b6371e4a274fc');
INSERT INTO public.detail VALUES ('60c1dfd2-0ddd-7cd6-a46c-1d0187426e08', NULL, 'back\\slash \\u0000 \\nhalf \ud83d a pair	\u0000\t\n[31mé é 中文\u0000\t\n[31m
', '', 'a‮b‏''single'' "double" `back`', '0acd9cdde7cdf17f533d7018bae4daeceecd002f128819f51872737649143e6f', NULL, NULL, NULL, NULL, NULL, '', '🎷 whole', 'half \ud83d a pair<script>alert(''x'')</script>', 'cf8c520a5833803791c31e731a3756b826f5ac64f053e17c114eba54f051d012');
INSERT INTO public.detail VALUES ('4aba1f15-787f-aa11-c978-8c94a8278b3b', NULL, '', '''single'' "double" `back`', 'back\\slash \\u0000 \\n', 'ce20540e25dbec5dc238920109713d7a24f49ef5d602497325cd1527b81eb156', NULL, NULL, NULL, NULL, NULL, 'é é 中文"; DROP TABLE entry; --=1+1', '', '<script>alert(''x'')</script>é é 中文=1+1', '77f79a887526f794d2a66c997f1f0f3f2fc3221cc0896a5b65cc5f541b9735f9');
INSERT INTO public.detail VALUES ('a5cedc29-5e7f-5f04-890e-21c909b51340', 'é é 中文', 'line\none\ttab''single'' "double" `back`	\u0000\t\n[31m''single'' "double" `back`
line\none\ttabhalf \ud83d a pair	é é 中文a‮b‏''single'' "double" `back`
', 'half \ud83d a pair', NULL, NULL, '\u0000	
[31m', '', 'half \ud83d a pair"; DROP TABLE entry; --', 48000, 64, NULL, NULL, 'line
one	tab\u0000	
[31mback\\slash \\u0000 \\n', '47cc1c5e8c3764cb4b3e97ab49074cb7c1e777932bab9fad72dd0f91410338fc');
INSERT INTO public.detail VALUES ('edaf6a9f-3fca-db0a-07cf-6eafd30e5099', NULL, 'line\none\ttabline\none\ttaba‮b‏	
	<script>alert(''x'')</script>half \ud83d a pair
', '=1+1', NULL, NULL, NULL, NULL, NULL, NULL, NULL, NULL, NULL, '\udc00 the other half', '0f3096257b5fd4dead0fdd01ae9a1081c18494eb5ce43f5209bd8b893cc014f7');
INSERT INTO public.detail VALUES ('b65e73fc-92d7-413d-a718-d41ff2c353ac', '=1+1=1+1', '', '🎷 wholea‮b‏🎷 whole', NULL, NULL, NULL, NULL, NULL, NULL, NULL, '', 'back\\slash \\u0000 \\n"; DROP TABLE entry; --', '"; DROP TABLE entry; --\u0000	
[31m', '7c599aa46e2ad53243fd962d48fc7acd2985f2ebf84866f8a6f823c2697f83a3');
INSERT INTO public.detail VALUES ('b823c01f-299a-52ae-9a8b-e7fe5556c866', NULL, '''single'' "double" `back`a‮b‏	line\none\ttab\u0000\t\n[31m<script>alert(''x'')</script>
', '', '\u0000	
[31m''single'' "double" `back`a‮b‏', '705693e4e7aa3691d9c045341dffa3a17a7b70295d3c0b56cb3d31342a8ec61a', NULL, NULL, NULL, NULL, NULL, NULL, NULL, 'line
one	tabline
one	tab', 'd51ca5c45706381af46c2c99a22708236d71315d0c4fcb088b7549b3ab9accf3');
INSERT INTO public.detail VALUES ('b4c6a619-f5a1-6487-d29d-5d0ec7892313', '', '	
', '''single'' "double" `back`\u0000	
[31m', NULL, NULL, 'back\\slash \\u0000 \\n', '', '', 48000, 64, NULL, NULL, '', '9fb3df9c8d058a8b43381222c9e2ff6178bb1be8e3e7469a69a3a3caf172e7be');
INSERT INTO public.detail VALUES ('08647fe2-b452-44f4-e8bf-81c0ea3b6f62', 'back\\slash \\u0000 \\n', 'back\\slash \\u0000 \\nback\\slash \\u0000 \\nhalf \ud83d a pair	<script>alert(''x'')</script>
', '''single'' "double" `back`line
one	tab', NULL, NULL, '', 'é é 中文', 'half \ud83d a pair', 48000, 64, 'back\\slash \\u0000 \\na‮b‏<script>alert(''x'')</script>', '"; DROP TABLE entry; --', 'back\\slash \\u0000 \\n"; DROP TABLE entry; --\udc00 the other half', 'd5632421b9c09f1e0afb1529a756eba094c286d55f6ac95a1fbd1b72a014e0fc');
INSERT INTO public.detail VALUES ('88a19fa4-b40a-0df6-eada-9f70f78a6b23', '', 'line\none\ttab	\u0000\t\n[31m\udc00 the other halfhalf \ud83d a pair
<script>alert(''x'')</script>line\none\ttab	<script>alert(''x'')</script>
', 'a‮b‏\udc00 the other half', '\udc00 the other halfback\\slash \\u0000 \\n\u0000	
[31m', '6f36d46b0ce020fa42eb02e8ff6b560123b2170a7c438b78fd301f930a92377e', NULL, NULL, NULL, NULL, NULL, NULL, NULL, '', 'c6b8fa99588789f98919e2e7605514ae4e6347d685cf37d71e9e809a0012efc4');
INSERT INTO public.detail VALUES ('ad571c9d-70c6-ab1b-ff78-2e0a40307f8c', NULL, '\udc00 the other half"; DROP TABLE entry; --	
<script>alert(''x'')</script><script>alert(''x'')</script>	half \ud83d a pair\u0000\t\n[31m
<script>alert(''x'')</script>=1+1	\udc00 the other halfa‮b‏
', 'half \ud83d a pair', NULL, NULL, NULL, NULL, NULL, NULL, NULL, 'a‮b‏back\\slash \\u0000 \\n', '', '', 'fcd379c0b572a948b23fe0e86034367f22989499806f405524402179d6edf51b');
INSERT INTO public.detail VALUES ('ec9983dc-5f7f-8492-b28f-523f8c51ac81', NULL, '	
', '=1+1<script>alert(''x'')</script>', NULL, NULL, 'é é 中文🎷 whole', '\u0000	
[31ma‮b‏back\\slash \\u0000 \\n', 'é é 中文\udc00 the other half', 48000, 64, NULL, NULL, '', '4c668fc20d94b9378d742619572fdf25a64295e7087f733090f694ff0f62af21');
INSERT INTO public.detail VALUES ('24ea1713-9a17-3dea-52e3-a904734eebb4', NULL, '', '', 'a‮b‏''single'' "double" `back`"; DROP TABLE entry; --', '1b5d699512517a547134de466d66a03ead194afaf64e9998699e20f4d56cf8c4', 'é é 中文line
one	tab', '<script>alert(''x'')</script>', '', 48000, 64, NULL, NULL, 'é é 中文=1+1', '491200728b22f413c11ed345f71a595b62b283bb9f455e0510d5c3e67861599a');


--
-- Data for Name: entry; Type: TABLE DATA; Schema: public; Owner: -
--

INSERT INTO public.entry OVERRIDING SYSTEM VALUE VALUES (1, '12345678-9abc-4000-8000-000000000001', 1777658460125, 'Europe/Lisbon', 'Harbour, Friday', 'before', 'vocal-house', 'measured', 595, 48000, 0.04, NULL, 'good');
INSERT INTO public.entry OVERRIDING SYSTEM VALUE VALUES (2, '12345678-9abc-4000-8000-000000000002', 1777658520125, 'Europe/Lisbon', 'Harbour, Friday', 'before', 'vocal-house', 'measured', 595, 48000, 0.04, '12345678-9abc-4000-8000-000000000001', 'good');
INSERT INTO public.entry OVERRIDING SYSTEM VALUE VALUES (3, '910a2dec-8902-5cc1-beeb-8da1658eec67', 1777658402079, '+05:45', 'x\u0000	
[31m<script>alert(''x'')</script>🎷 whole', 'after', '🎷 whole🎷 whole', 'not-trustworthy', 9906.165085748737, 48000, 1e-07, NULL, 'undecided');
INSERT INTO public.entry OVERRIDING SYSTEM VALUE VALUES (4, '21af8cfd-4c4c-bee5-5360-00f4bd6ae8f8', 1777658403056, '+05:45', 'x', 'during', NULL, 'not-trustworthy', NULL, NULL, NULL, NULL, 'bad');
INSERT INTO public.entry OVERRIDING SYSTEM VALUE VALUES (5, '96bf5d40-5151-ec53-aa3d-e53fbde4ae5b', 1777658404033, 'UTC', 'xback\\slash \\u0000 \\n<script>alert(''x'')</script>=1+1', 'before', NULL, 'not-trustworthy', NULL, NULL, NULL, NULL, NULL);
INSERT INTO public.entry OVERRIDING SYSTEM VALUE VALUES (6, '3b2682ca-23c4-ff68-49e9-2cf9955c4d96', 1777658405010, 'UTC', 'x🎷 whole"; DROP TABLE entry; --=1+1', 'during', NULL, 'not-trustworthy', NULL, NULL, NULL, NULL, 'not-judged');
INSERT INTO public.entry OVERRIDING SYSTEM VALUE VALUES (7, '27455ad9-65bb-6738-fb47-3b97f0ac3990', 1777658405987, 'UTC', 'xa‮b‏<script>alert(''x'')</script>\u0000	
[31m', 'during', NULL, 'not-trustworthy', 1033.2063168713576, 48000, 1e-07, NULL, 'good');
INSERT INTO public.entry OVERRIDING SYSTEM VALUE VALUES (8, '590aae46-4f2c-3718-767d-0e5c3c13df0a', 1777658406964, 'UTC', 'xline
one	tab"; DROP TABLE entry; --', 'after', NULL, 'not-trustworthy', 5976.571601350115, 48000, 1e-07, NULL, 'undecided');
INSERT INTO public.entry OVERRIDING SYSTEM VALUE VALUES (9, 'c501c320-455f-e5ee-2454-0d94fe0993de', 1777658407941, '+05:45', 'x', 'before', NULL, 'not-trustworthy', NULL, NULL, NULL, NULL, 'bad');
INSERT INTO public.entry OVERRIDING SYSTEM VALUE VALUES (10, '296deeed-f961-1dea-b3b1-bbb3f5ff6aee', 1777658408918, 'UTC', 'x\u0000	
[31m', 'after', NULL, 'not-trustworthy', 3393.1414834331927, 48000, 1e-07, NULL, NULL);
INSERT INTO public.entry OVERRIDING SYSTEM VALUE VALUES (11, 'ce62a526-4678-1d2d-c36c-5f3a9fa8ae35', 1777658409895, '+05:45', 'x"; DROP TABLE entry; --é é 中文line
one	tab', 'during', NULL, 'not-trustworthy', NULL, NULL, NULL, NULL, 'not-judged');
INSERT INTO public.entry OVERRIDING SYSTEM VALUE VALUES (12, 'f02d453a-0b26-13f3-32af-04e4bc58a7e1', 1777658410872, 'UTC', 'xhalf \ud83d a pair', 'after', NULL, 'not-trustworthy', NULL, NULL, NULL, NULL, 'good');
INSERT INTO public.entry OVERRIDING SYSTEM VALUE VALUES (13, '60c1dfd2-0ddd-7cd6-a46c-1d0187426e08', 1777658411849, 'UTC', 'xa‮b‏', 'during', '', 'not-trustworthy', NULL, NULL, NULL, NULL, 'undecided');
INSERT INTO public.entry OVERRIDING SYSTEM VALUE VALUES (14, '4aba1f15-787f-aa11-c978-8c94a8278b3b', 1777658412826, 'UTC', 'x=1+1🎷 whole<script>alert(''x'')</script>', 'after', 'é é 中文<script>alert(''x'')</script>', 'not-trustworthy', NULL, NULL, NULL, NULL, 'bad');
INSERT INTO public.entry OVERRIDING SYSTEM VALUE VALUES (15, 'a5cedc29-5e7f-5f04-890e-21c909b51340', 1777658413803, '+05:45', 'x', 'after', NULL, 'not-trustworthy', NULL, NULL, NULL, NULL, NULL);
INSERT INTO public.entry OVERRIDING SYSTEM VALUE VALUES (16, 'edaf6a9f-3fca-db0a-07cf-6eafd30e5099', 1777658414780, '+05:45', 'x', 'after', NULL, 'not-trustworthy', -5996.9738658949, 48000, 1e-07, NULL, 'not-judged');
INSERT INTO public.entry OVERRIDING SYSTEM VALUE VALUES (17, 'b65e73fc-92d7-413d-a718-d41ff2c353ac', 1777658415757, '+05:45', 'x', 'after', NULL, 'not-trustworthy', 4595.884813092917, 48000, 1e-07, NULL, 'good');
INSERT INTO public.entry OVERRIDING SYSTEM VALUE VALUES (18, 'b823c01f-299a-52ae-9a8b-e7fe5556c866', 1777658416734, '+05:45', 'x"; DROP TABLE entry; --', 'before', '=1+1=1+1', 'not-trustworthy', -2671.297145072884, 48000, 1e-07, NULL, 'undecided');
INSERT INTO public.entry OVERRIDING SYSTEM VALUE VALUES (19, 'b4c6a619-f5a1-6487-d29d-5d0ec7892313', 1777658417711, 'UTC', 'x"; DROP TABLE entry; --', 'during', NULL, 'not-trustworthy', NULL, NULL, NULL, NULL, 'bad');
INSERT INTO public.entry OVERRIDING SYSTEM VALUE VALUES (20, '08647fe2-b452-44f4-e8bf-81c0ea3b6f62', 1777658418688, 'UTC', 'x"; DROP TABLE entry; --', 'after', NULL, 'not-trustworthy', NULL, NULL, NULL, NULL, NULL);
INSERT INTO public.entry OVERRIDING SYSTEM VALUE VALUES (21, '88a19fa4-b40a-0df6-eada-9f70f78a6b23', 1777658419665, 'UTC', 'x=1+1line
one	tab', 'before', NULL, 'not-trustworthy', NULL, NULL, NULL, NULL, 'not-judged');
INSERT INTO public.entry OVERRIDING SYSTEM VALUE VALUES (22, 'ad571c9d-70c6-ab1b-ff78-2e0a40307f8c', 1777658420642, 'UTC', 'x"; DROP TABLE entry; --', 'after', NULL, 'not-trustworthy', NULL, NULL, NULL, NULL, 'good');
INSERT INTO public.entry OVERRIDING SYSTEM VALUE VALUES (23, 'ec9983dc-5f7f-8492-b28f-523f8c51ac81', 1777658421619, '+05:45', 'xhalf \ud83d a pair=1+1', 'before', NULL, 'not-trustworthy', -4670.2878244060075, 48000, 1e-07, NULL, 'undecided');
INSERT INTO public.entry OVERRIDING SYSTEM VALUE VALUES (24, '24ea1713-9a17-3dea-52e3-a904734eebb4', 1777658422596, '+05:45', 'xline
one	tab\udc00 the other halfé é 中文', 'after', '\u0000	
[31mline
one	tabline
one	tab', 'not-trustworthy', NULL, NULL, NULL, NULL, 'bad');


--
-- Data for Name: journal_version; Type: TABLE DATA; Schema: public; Owner: -
--

INSERT INTO public.journal_version VALUES (1, '1', 'entries', 'SQL', 'V1__entries.sql', 2141037340, 'loopgauge', '2026-11-29 10:46:13.939346', 152, true);
INSERT INTO public.journal_version VALUES (2, '2', 'standing', 'SQL', 'V2__standing.sql', -1735822519, 'loopgauge', '2026-11-29 10:46:14.150441', 22, true);


--
-- Name: entry_position_seq; Type: SEQUENCE SET; Schema: public; Owner: -
--

SELECT pg_catalog.setval('public.entry_position_seq', 24, true);


--
-- Name: chain chain_pkey; Type: CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.chain
    ADD CONSTRAINT chain_pkey PRIMARY KEY (digest);


--
-- Name: detail detail_pkey; Type: CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.detail
    ADD CONSTRAINT detail_pkey PRIMARY KEY (entry_id);


--
-- Name: entry entry_id_key; Type: CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.entry
    ADD CONSTRAINT entry_id_key UNIQUE (id);


--
-- Name: entry entry_pkey; Type: CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.entry
    ADD CONSTRAINT entry_pkey PRIMARY KEY ("position");


--
-- Name: journal_version journal_version_pk; Type: CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.journal_version
    ADD CONSTRAINT journal_version_pk PRIMARY KEY (installed_rank);


--
-- Name: entry_by_path; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX entry_by_path ON public.entry USING btree (path, at_ms, "position");


--
-- Name: entry_by_show; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX entry_by_show ON public.entry USING btree (show_name, at_ms, "position");


--
-- Name: entry_by_time; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX entry_by_time ON public.entry USING btree (at_ms, "position");


--
-- Name: journal_version_s_idx; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX journal_version_s_idx ON public.journal_version USING btree (success);


--
-- Name: chain chain_is_kept; Type: TRIGGER; Schema: public; Owner: -
--

CREATE TRIGGER chain_is_kept BEFORE DELETE OR UPDATE OR TRUNCATE ON public.chain FOR EACH STATEMENT EXECUTE FUNCTION public.journal_only_grows();


--
-- Name: detail detail_is_kept; Type: TRIGGER; Schema: public; Owner: -
--

CREATE TRIGGER detail_is_kept BEFORE DELETE OR UPDATE OR TRUNCATE ON public.detail FOR EACH STATEMENT EXECUTE FUNCTION public.journal_only_grows();


--
-- Name: entry entry_is_kept; Type: TRIGGER; Schema: public; Owner: -
--

CREATE TRIGGER entry_is_kept BEFORE DELETE OR UPDATE OR TRUNCATE ON public.entry FOR EACH STATEMENT EXECUTE FUNCTION public.journal_only_grows();


--
-- Name: detail detail_chain_digest_fkey; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.detail
    ADD CONSTRAINT detail_chain_digest_fkey FOREIGN KEY (chain_digest) REFERENCES public.chain(digest);


--
-- Name: detail detail_entry_id_fkey; Type: FK CONSTRAINT; Schema: public; Owner: -
--

ALTER TABLE ONLY public.detail
    ADD CONSTRAINT detail_entry_id_fkey FOREIGN KEY (entry_id) REFERENCES public.entry(id);


--
-- PostgreSQL database dump complete
--

\unrestrict 7DBXU0WC8zcvP9KLfGtL7N6gXMAyIIZR3eWsEtnoHb9DIhkXxZsOOK0hXFJzGU7

