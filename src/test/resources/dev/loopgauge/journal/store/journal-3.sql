--
-- PostgreSQL database dump
--

\restrict R524a0Pqgw0JD7v0SksFLiWwmEMmznLLkYeuvnFJ7kM6sY1VUv24INML1g6xW86

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
    offset_s integer,
    heading_digest text,
    origin text,
    number bigint DEFAULT 0 NOT NULL,
    link text,
    order_ms bigint DEFAULT 0 NOT NULL,
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
-- Name: own_origin; Type: TABLE; Schema: public; Owner: -
--

CREATE TABLE public.own_origin (
    id text NOT NULL,
    kept bigint NOT NULL,
    link text NOT NULL,
    order_ms bigint,
    unchained bigint NOT NULL
);


--
-- Data for Name: chain; Type: TABLE DATA; Schema: public; Owner: -
--

INSERT INTO public.chain VALUES ('ea42ce48a5d083fd81c5921cbade7fd1603d8bec77b5b4934fa4c807154c61c2', 'chain: Hall
');
INSERT INTO public.chain VALUES ('e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855', '');
INSERT INTO public.chain VALUES ('c3a99cd43e7323032086ca2c899d6c1bdb7ca78cb7bf7498048a7ee481978383', '🎷 whole');
INSERT INTO public.chain VALUES ('1ff7a54f72d3ca2e445c0742a1849237c16c76cab46ed222d862828d0e0f5d63', 'half \ud83d a pair''single'' "double" `back`''single'' "double" `back`');
INSERT INTO public.chain VALUES ('4dcd73a8577618693ea1b4987bd712a8555336c9359cec58e1847a67bc78b95b', 'a‮b‏\u0000	
[31m"; DROP TABLE entry; --');
INSERT INTO public.chain VALUES ('d855c93003c35b303c103acb9b11280d1596c7b0dbf07f19e84fbc64f277901a', 'a‮b‏\udc00 the other half🎷 whole');
INSERT INTO public.chain VALUES ('5a76f7d0322f4118285f2cea8339647cb613a76af7105137c2f0d8fde12d1140', '''single'' "double" `back`\udc00 the other half"; DROP TABLE entry; --');
INSERT INTO public.chain VALUES ('9fd12aafec22819489a33ee6d5fdecf9d815830d7e33cd95a6625c8232de200e', 'half \ud83d a pair');
INSERT INTO public.chain VALUES ('450ed1599014d8529f2baa2cfbf19ca415622017a5b823b65bd25a262d4113d4', 'back\\slash \\u0000 \\n"; DROP TABLE entry; --');
INSERT INTO public.chain VALUES ('15199dc95346973a57b79499563d9796e7efacdd58c630cebc9e2ca5048cf46c', '"; DROP TABLE entry; --');
INSERT INTO public.chain VALUES ('4eeaca02ffb4cb258f2fec4ab28817fd36a658b45b386b813e4dfcf5788af93c', 'half \ud83d a pair\u0000	
[31m');


--
-- Data for Name: detail; Type: TABLE DATA; Schema: public; Owner: -
--

INSERT INTO public.detail VALUES ('12345678-9abc-4000-8000-000000000001', 'all as planned', 'clock-leader	desk
network-latency	1 ms
', '{"schema":1,"command":"measure","outcome":"measured","verdict":{"standing":"good"},"measurement":{"sampleRateHz":48000,"delaySamples":595.0,"uncertaintySamples":0.04}}', 'hall.yaml', 'ea42ce48a5d083fd81c5921cbade7fd1603d8bec77b5b4934fa4c807154c61c2', 'jack', 'rig', 'rig', 48000, 64, 'a.wav.gz', '00', '0.1.0', '17c54ce20334f2fdab2f8e4366d7ede83150e77e9f0fcbbadc2fc24790280ae9');
INSERT INTO public.detail VALUES ('12345678-9abc-4000-8000-000000000002', 'all as planned', 'clock-leader	desk
network-latency	1 ms
', '{"schema":1,"command":"measure","outcome":"measured","verdict":{"standing":"good"},"measurement":{"sampleRateHz":48000,"delaySamples":595.0,"uncertaintySamples":0.04}}', 'hall.yaml', 'ea42ce48a5d083fd81c5921cbade7fd1603d8bec77b5b4934fa4c807154c61c2', 'jack', 'rig', 'rig', 48000, 64, 'a.wav.gz', '00', '0.1.0', '74c38e202b748e3cdc27654d38ca4cdeb2510733f15609a499b170b885ac7236');
INSERT INTO public.detail VALUES ('910a2dec-8902-5cc1-beeb-8da1658eec67', NULL, 'half \ud83d a pair	\u0000\t\n[31ma‮b‏=1+1
', '{"command":"x\\udc00 the other half🎷 whole","outcome":"not-trustworthy","text":"<script>alert(''x'')</script>a‮b‏\\u0000\\u0001\\t\\r\\n\\u001B[31m"}', '🎷 whole\udc00 the other half=1+1', 'e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855', '<script>alert(''x'')</script>', 'a‮b‏', '', 48000, 64, '🎷 whole🎷 wholea‮b‏', '''single'' "double" `back`"; DROP TABLE entry; --', '🎷 whole=1+1', '5dbab52ea7717325b0be81e0be23ae689a3683d58455ada6a8a1cb55d546a6b7');
INSERT INTO public.detail VALUES ('16758727-2751-ecaf-9b67-9c859acd7aaf', '''single'' "double" `back`', '', '{"command":"x''single'' \\"double\\" `back`🎷 whole","outcome":"not-trustworthy","text":"line\\none\\ttab"}', NULL, NULL, '\udc00 the other half', '"; DROP TABLE entry; --half \ud83d a pair\u0000	
[31m', '', 48000, 64, NULL, NULL, '=1+1', 'b34f51b4c206df510df9cc513a0fde69431198f058fc794a67aa83a6563718cf');
INSERT INTO public.detail VALUES ('4f05f037-35c3-b951-bc73-014050141d01', '\udc00 the other halfé é 中文', '', '{"command":"x\\udc00 the other halfhalf \\ud83d a pair''single'' \\"double\\" `back`","outcome":"not-trustworthy","text":"\\udc00 the other halfback\\\\slash \\\\u0000 \\\\n"}', '🎷 whole\u0000	
[31m=1+1', 'c3a99cd43e7323032086ca2c899d6c1bdb7ca78cb7bf7498048a7ee481978383', NULL, NULL, NULL, NULL, NULL, NULL, NULL, '''single'' "double" `back`\u0000	
[31m', 'b4e2d56fe61463aa7d2362e29cafc269820c8a0cccaf0eab2746f4fc8156382b');
INSERT INTO public.detail VALUES ('3ed180b5-5721-039f-8290-184daf554eb1', NULL, '=1+1	
', '{"command":"x","outcome":"not-trustworthy","text":"<script>alert(''x'')</script>"}', 'half \ud83d a paira‮b‏', '1ff7a54f72d3ca2e445c0742a1849237c16c76cab46ed222d862828d0e0f5d63', NULL, NULL, NULL, NULL, NULL, 'a‮b‏é é 中文', '\udc00 the other half', 'half \ud83d a paira‮b‏', '1ec068dcd67c2a0cb800389248cb602a68646dc86c28eca4a008ae7c47bc56fb');
INSERT INTO public.detail VALUES ('27455ad9-65bb-6738-fb47-3b97f0ac3990', 'a‮b‏=1+1', '', '{"command":"x","outcome":"not-trustworthy","text":""}', NULL, NULL, '<script>alert(''x'')</script>half \ud83d a pair', '🎷 wholea‮b‏', '<script>alert(''x'')</script>', 48000, 64, '\u0000	
[31mé é 中文"; DROP TABLE entry; --', '<script>alert(''x'')</script>line
one	tab', '''single'' "double" `back`"; DROP TABLE entry; --line
one	tab', '8dce418bb224f486f9ad7e050e8551105576b2a723ded88936963497a3a6af41');
INSERT INTO public.detail VALUES ('f843aeaf-1407-7737-9120-67d540a348e1', NULL, '	\u0000\t\n[31m
', '{"command":"x''single'' \\"double\\" `back`","outcome":"not-trustworthy","text":""}', '\udc00 the other half', '4dcd73a8577618693ea1b4987bd712a8555336c9359cec58e1847a67bc78b95b', '🎷 whole\u0000	
[31m', '', 'half \ud83d a pair', 48000, 64, '<script>alert(''x'')</script>', '', 'a‮b‏half \ud83d a pair=1+1', 'e3a64434557b576ef9efbfde764967b76daad04bc15b0b7376a617d6a1f298e5');
INSERT INTO public.detail VALUES ('c501c320-455f-e5ee-2454-0d94fe0993de', NULL, '', '{"command":"x<script>alert(''x'')</script>\\"; DROP TABLE entry; --","outcome":"not-trustworthy","text":"é é 中文\\u0000\\u0001\\t\\r\\n\\u001B[31mline\\none\\ttab"}', 'line
one	tab''single'' "double" `back`', 'e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855', 'half \ud83d a pair=1+1', 'half \ud83d a pair\udc00 the other half<script>alert(''x'')</script>', '\u0000	
[31m', 48000, 64, NULL, NULL, '''single'' "double" `back`🎷 whole', '8615f5effdf8993188d8a1923ddef49c3fa054944c76ce95608ecba4e80eccb1');
INSERT INTO public.detail VALUES ('79fd5e62-7a33-4e6d-1aa4-4eedef1727ea', 'é é 中文''single'' "double" `back`=1+1', 'half \ud83d a pair=1+1	
', '{"command":"xback\\\\slash \\\\u0000 \\\\n","outcome":"not-trustworthy","text":"\\u0000\\u0001\\t\\r\\n\\u001B[31m🎷 whole"}', NULL, NULL, NULL, NULL, NULL, NULL, NULL, '=1+1back\\slash \\u0000 \\n<script>alert(''x'')</script>', 'line
one	tab=1+1', '"; DROP TABLE entry; --', '8df7279ae5aa0d1e1a4f840a12f0ada8a2420d53d06f91311fb8395a60e5eaf7');
INSERT INTO public.detail VALUES ('adb19fad-f862-4864-00b3-029e6e41c9e7', '', 'half \ud83d a pair=1+1<script>alert(''x'')</script>	=1+1a‮b‏\udc00 the other half
''single'' "double" `back`a‮b‏	
half \ud83d a pair"; DROP TABLE entry; --''single'' "double" `back`	''single'' "double" `back`🎷 whole\udc00 the other half
', '{"command":"xhalf \\ud83d a pair","outcome":"not-trustworthy","text":"a‮b‏"}', '\u0000	
[31m', 'd855c93003c35b303c103acb9b11280d1596c7b0dbf07f19e84fbc64f277901a', NULL, NULL, NULL, NULL, NULL, NULL, NULL, '', 'a83b8ab9a0d11ffe7d3b525d91d967dc831962c551c22b94988ac8dbdd0ac396');
INSERT INTO public.detail VALUES ('3df0a425-8fc8-2935-7336-0061b4da39b6', 'back\\slash \\u0000 \\n', '\u0000\t\n[31mé é 中文	
	"; DROP TABLE entry; --
"; DROP TABLE entry; --\u0000\t\n[31m	
', '{"command":"x\\"; DROP TABLE entry; --","outcome":"not-trustworthy","text":""}', NULL, NULL, NULL, NULL, NULL, NULL, NULL, '', 'a‮b‏''single'' "double" `back`', 'a‮b‏', '8719c98996d5d9be4105d20d0bc6f607729706456e312e9dbba9560d43bfa96c');
INSERT INTO public.detail VALUES ('908560c8-eb68-75b0-4085-533abdd8f693', NULL, 'back\\slash \\u0000 \\nhalf \ud83d a pair	\udc00 the other half
', '{"command":"x<script>alert(''x'')</script>","outcome":"not-trustworthy","text":"\\udc00 the other halfé é 中文"}', NULL, NULL, '🎷 wholehalf \ud83d a pair''single'' "double" `back`', 'back\\slash \\u0000 \\n', 'line
one	tab''single'' "double" `back`half \ud83d a pair', 48000, 64, '''single'' "double" `back`"; DROP TABLE entry; --é é 中文', '', '=1+1é é 中文é é 中文', '91d965e14a7375711b997b2a4b9028cd0a28a2935f13c182e4cb180363fa0e0e');
INSERT INTO public.detail VALUES ('aa59d79d-bd27-8e5d-87d3-7aac929bbbf6', '\u0000	
[31m''single'' "double" `back`', '	line\none\ttab\udc00 the other half
back\\slash \\u0000 \\nline\none\ttab	
', '{"command":"xhalf \\ud83d a pairline\\none\\ttab","outcome":"not-trustworthy","text":"a‮b‏''single'' \\"double\\" `back`<script>alert(''x'')</script>"}', '"; DROP TABLE entry; --a‮b‏half \ud83d a pair', '5a76f7d0322f4118285f2cea8339647cb613a76af7105137c2f0d8fde12d1140', '<script>alert(''x'')</script>line
one	tab', '''single'' "double" `back`\u0000	
[31m<script>alert(''x'')</script>', 'half \ud83d a pair"; DROP TABLE entry; --', 48000, 64, NULL, NULL, 'line
one	tab\u0000	
[31mback\\slash \\u0000 \\n', '2f3dfdf672ebad3172cbd522e695719c63d3dfda4444c0e7f923e9caa1561516');
INSERT INTO public.detail VALUES ('edaf6a9f-3fca-db0a-07cf-6eafd30e5099', NULL, 'line\none\ttabline\none\ttaba‮b‏	
	<script>alert(''x'')</script>half \ud83d a pair
', '{"command":"x=1+1","outcome":"not-trustworthy","text":"🎷 whole<script>alert(''x'')</script>line\\none\\ttab"}', '', '9fd12aafec22819489a33ee6d5fdecf9d815830d7e33cd95a6625c8232de200e', NULL, NULL, NULL, NULL, NULL, '\udc00 the other half', 'é é 中文back\\slash \\u0000 \\n=1+1', '', '00951e0b361379a4e5863bf38047cbe7c2acdedafdb9fe7432c7f518e0005ed5');
INSERT INTO public.detail VALUES ('bfff0cce-0d22-ddae-2489-f12c886a6874', 'half \ud83d a pair', '=1+1	=1+1line\none\ttab\u0000\t\n[31m
', '{"command":"xhalf \\ud83d a pair","outcome":"not-trustworthy","text":"back\\\\slash \\\\u0000 \\\\n=1+1🎷 whole"}', '<script>alert(''x'')</script>', '450ed1599014d8529f2baa2cfbf19ca415622017a5b823b65bd25a262d4113d4', '"; DROP TABLE entry; --\u0000	
[31m', '=1+1', '''single'' "double" `back`"; DROP TABLE entry; --', 48000, 64, '=1+1=1+1', 'a‮b‏', '\udc00 the other half', '0bcc259d77f39401112af5d67abf033730afdbf7d54b29b984581b4fc3bb0fb7');
INSERT INTO public.detail VALUES ('3a62209c-3fcf-0186-4231-74f8a22e843f', NULL, '	"; DROP TABLE entry; --
a‮b‏	<script>alert(''x'')</script>\udc00 the other half<script>alert(''x'')</script>
', '{"command":"xé é 中文back\\\\slash \\\\u0000 \\\\n\\"; DROP TABLE entry; --","outcome":"not-trustworthy","text":"\\u0000\\u0001\\t\\r\\n\\u001B[31m"}', NULL, NULL, 'line
one	tabline
one	tab', '''single'' "double" `back`=1+1half \ud83d a pair', '"; DROP TABLE entry; --<script>alert(''x'')</script>', 48000, 64, NULL, NULL, '', '42fd3095e4f9d068ce7a38aea9daffc67e57e59480a9de1249e202bb786c48ab');
INSERT INTO public.detail VALUES ('09736869-fc72-7113-32a0-375a8c0c08b2', NULL, '"; DROP TABLE entry; --half \ud83d a pair	a‮b‏
', '{"command":"x=1+1","outcome":"not-trustworthy","text":""}', NULL, NULL, '''single'' "double" `back`', '', 'back\\slash \\u0000 \\n', 48000, 64, '''single'' "double" `back`line
one	tab', 'a‮b‏line
one	tab"; DROP TABLE entry; --', '🎷 whole', '798c58a062053eff7539263dd2887115275b4a502c111a7c37360ecc68d740ad');
INSERT INTO public.detail VALUES ('8753aa3a-a3e9-1bc5-d4e0-6692e7b4d4d3', '\u0000	
[31m\udc00 the other halfhalf \ud83d a pair', '\udc00 the other halfback\\slash \\u0000 \\n🎷 whole	
=1+1line\none\ttab	"; DROP TABLE entry; --🎷 whole''single'' "double" `back`
line\none\ttab"; DROP TABLE entry; --	''single'' "double" `back`line\none\ttab
', '{"command":"x","outcome":"not-trustworthy","text":"<script>alert(''x'')</script><script>alert(''x'')</script>"}', '', '15199dc95346973a57b79499563d9796e7efacdd58c630cebc9e2ca5048cf46c', '\u0000	
[31m\udc00 the other halfback\\slash \\u0000 \\n', 'back\\slash \\u0000 \\nline
one	tab', 'back\\slash \\u0000 \\n\udc00 the other half=1+1', 48000, 64, NULL, NULL, '🎷 whole', '07bc49650f93fba11c8cd64da6a8d22e6d7002f1e5adacde9445d1232694d51c');
INSERT INTO public.detail VALUES ('2313e14a-0754-f1e2-783a-efa09b0c4ef3', NULL, '', '{"command":"x\\udc00 the other half\\"; DROP TABLE entry; --","outcome":"not-trustworthy","text":""}', '<script>alert(''x'')</script><script>alert(''x'')</script>', '4eeaca02ffb4cb258f2fec4ab28817fd36a658b45b386b813e4dfcf5788af93c', NULL, NULL, NULL, NULL, NULL, NULL, NULL, '', '9ba177b5f15554e719c7db6437a63cc95c06cbba201dc5fa79c5c3885ce0d33f');
INSERT INTO public.detail VALUES ('7996af88-c8ff-f922-5fa0-48438ae81274', NULL, 'a‮b‏back\\slash \\u0000 \\n	
', '{"command":"xhalf \\ud83d a pair=1+1","outcome":"not-trustworthy","text":"a‮b‏é é 中文''single'' \\"double\\" `back`"}', NULL, NULL, '=1+1', '=1+1<script>alert(''x'')</script>', 'a‮b‏', 48000, 64, NULL, NULL, 'a‮b‏back\\slash \\u0000 \\n"; DROP TABLE entry; --', 'd819c5b326d9d7d6fdae8d0bad86e3fe5ffe874670900aa0fcfb5e57fcf4ca58');
INSERT INTO public.detail VALUES ('7f9a8971-0968-0b9c-ec35-2a468bcd646c', '', '''single'' "double" `back`back\\slash \\u0000 \\n\u0000\t\n[31m	line\none\ttab<script>alert(''x'')</script>half \ud83d a pair
	
back\\slash \\u0000 \\nhalf \ud83d a pair	half \ud83d a pair"; DROP TABLE entry; --a‮b‏
', '{"command":"xback\\\\slash \\\\u0000 \\\\nhalf \\ud83d a pair\\"; DROP TABLE entry; --","outcome":"not-trustworthy","text":"\\u0000\\u0001\\t\\r\\n\\u001B[31mé é 中文line\\none\\ttab"}', '<script>alert(''x'')</script>', 'e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855', '=1+1🎷 whole', '', '"; DROP TABLE entry; --', 48000, 64, NULL, NULL, 'é é 中文"; DROP TABLE entry; --', '2167cf878966fb2e0c5681ac03a00352ba1139dcca0ac0882f5c93e0f51012b5');
INSERT INTO public.detail VALUES ('531189a3-6e51-20d3-5e77-e3c2e565caba', NULL, 'line\none\ttab<script>alert(''x'')</script>\u0000\t\n[31m	\u0000\t\n[31m
🎷 whole	
', '{"command":"x\\udc00 the other half","outcome":"not-trustworthy","text":"🎷 whole"}', NULL, NULL, 'é é 中文\u0000	
[31m', '', '=1+1\udc00 the other half', 48000, 64, NULL, NULL, '"; DROP TABLE entry; --half \ud83d a pair"; DROP TABLE entry; --', '131bb0fb2a56bab61a8877eca1a93f6526d2e8442034619f4af54659acb3a444');
INSERT INTO public.detail VALUES ('dac8c66c-2448-3991-926c-b2ba701fc323', NULL, '"; DROP TABLE entry; --\udc00 the other half=1+1	back\\slash \\u0000 \\nline\none\ttab
=1+1a‮b‏\u0000\t\n[31m	
back\\slash \\u0000 \\n	"; DROP TABLE entry; --
', '{"command":"xhalf \\ud83d a pairé é 中文half \\ud83d a pair","outcome":"not-trustworthy","text":""}', NULL, NULL, '''single'' "double" `back`a‮b‏', '=1+1', '', 48000, 64, '🎷 whole', '<script>alert(''x'')</script>\u0000	
[31m', '\udc00 the other half"; DROP TABLE entry; --', '73d8abcf49ae4c1ae4053329641c36bb13a4cff740ebbaf9cf6a64e5f6f95b0e');


--
-- Data for Name: entry; Type: TABLE DATA; Schema: public; Owner: -
--

INSERT INTO public.entry OVERRIDING SYSTEM VALUE VALUES (1, '12345678-9abc-4000-8000-000000000001', 1777658460125, 'Europe/Lisbon', 'Harbour, Friday', 'before', 'vocal-house', 'measured', 595, 48000, 0.04, NULL, 'good', 3600, '81680fca69ae1762772b0b21ebf095fe3d6b61b39b0d5b9cabe09dc9db5e25de', '69e43840c2ec4391b823a17ed54467e1', 1, 'eec2142ba15ed4e4cb6f7c797878aad2c7411349dbf77c6c691d1d4116cf9d47', 1777658460125);
INSERT INTO public.entry OVERRIDING SYSTEM VALUE VALUES (2, '12345678-9abc-4000-8000-000000000002', 1777658520125, 'Europe/Lisbon', 'Harbour, Friday', 'before', 'vocal-house', 'measured', 595, 48000, 0.04, '12345678-9abc-4000-8000-000000000001', 'good', 3600, '2b35290bb7d5890954ae6411951ac33f8b9837f8f7a0b5826b6fd6cb01ea68c0', '69e43840c2ec4391b823a17ed54467e1', 2, 'a556fb0e776554f27133f65edf8fc73999e90d40893b859b2145dfb9696b8f09', 1777658520125);
INSERT INTO public.entry OVERRIDING SYSTEM VALUE VALUES (3, '910a2dec-8902-5cc1-beeb-8da1658eec67', 1777658402079, '+05:45', 'x\u0000	
[31m<script>alert(''x'')</script>🎷 whole', 'after', '🎷 whole🎷 whole', 'not-trustworthy', 9906.165085748737, 48000, 1e-07, NULL, 'undecided', 20700, 'ffcba9005adc585267066ad83dcb5d8e403010708fd9299ea1899fd0d7f94a3a', '69e43840c2ec4391b823a17ed54467e1', 3, 'f9b036f78ea81ea7120846302de30d4432d34b621f73fa5254a9207104fbf300', 1777658520125);
INSERT INTO public.entry OVERRIDING SYSTEM VALUE VALUES (4, '16758727-2751-ecaf-9b67-9c859acd7aaf', 1777658403056, '+05:45', 'x=1+1\udc00 the other half=1+1', 'after', '<script>alert(''x'')</script>\u0000	
[31mline
one	tab', 'not-trustworthy', -10811.549181598653, 48000, 1e-07, NULL, 'bad', 20700, '823eff4860637eb9e3a22f177b0be72e7ebc0862416f0f94f946a1ae5fbef9d7', '69e43840c2ec4391b823a17ed54467e1', 4, '189aacb9120cbe6b6b63319f7ea6939e563ec05be26761b9a3af028adc65bafe', 1777658520125);
INSERT INTO public.entry OVERRIDING SYSTEM VALUE VALUES (5, '4f05f037-35c3-b951-bc73-014050141d01', 1777658404033, '+05:45', 'xback\\slash \\u0000 \\n', 'before', '<script>alert(''x'')</script>=1+1', 'not-trustworthy', -2819.040978034993, 48000, 1e-07, NULL, NULL, 20700, '085f54e1c69474fd2daea4fdabc2c8724c3d3451e2261a5fe74023eddf528dab', '69e43840c2ec4391b823a17ed54467e1', 5, 'a15b70ab6227f3ba2552af8ffa60d3df6183a954e3dabac90c14d63b482759d9', 1777658520125);
INSERT INTO public.entry OVERRIDING SYSTEM VALUE VALUES (6, '3ed180b5-5721-039f-8290-184daf554eb1', 1777658405010, '+05:45', 'x', 'before', '"; DROP TABLE entry; --"; DROP TABLE entry; --🎷 whole', 'not-trustworthy', NULL, NULL, NULL, NULL, 'not-judged', 20700, '8a1b4a5afb63cab385035976357e324143fb9ef256dc66d219eab670ef861884', '69e43840c2ec4391b823a17ed54467e1', 6, '49678b2d70561e224261f5da4aa930ed46d201afd38cdf930be505beaa122618', 1777658520125);
INSERT INTO public.entry OVERRIDING SYSTEM VALUE VALUES (7, '27455ad9-65bb-6738-fb47-3b97f0ac3990', 1777658405987, 'UTC', 'xa‮b‏<script>alert(''x'')</script>\u0000	
[31m', 'during', NULL, 'not-trustworthy', 1033.2063168713576, 48000, 1e-07, NULL, 'good', 0, '637705b950736c659955d95ad4cc935dabaac565f4cf0ffc50e8fc322621ebba', '69e43840c2ec4391b823a17ed54467e1', 7, 'a25c603b8cc8f1d271ad71911d9754a905ce8e19221b19918417421146ee2183', 1777658520125);
INSERT INTO public.entry OVERRIDING SYSTEM VALUE VALUES (8, 'f843aeaf-1407-7737-9120-67d540a348e1', 1777658406964, 'UTC', 'xline
one	tab', 'before', NULL, 'not-trustworthy', NULL, NULL, NULL, NULL, 'undecided', 0, '9bf2c4ca428ebb47941096c1449b8430b24cf1c0ad79b92d027db8259129062e', '69e43840c2ec4391b823a17ed54467e1', 8, '52d5cb88724d96d4c233dac80e0eb059675527581499613cf712b03a093ee37a', 1777658520125);
INSERT INTO public.entry OVERRIDING SYSTEM VALUE VALUES (9, 'c501c320-455f-e5ee-2454-0d94fe0993de', 1777658407941, '+05:45', 'x', 'before', NULL, 'not-trustworthy', NULL, NULL, NULL, NULL, 'bad', 20700, '8860ef1b43e5455d09fb85c1151b86d3add76bacaf2960382e01c1a6e68249f5', '69e43840c2ec4391b823a17ed54467e1', 9, '2ef390c95431eb4aea3ae2e649983c90cd5a2bb7441852a9f2b7a8a182063a1e', 1777658520125);
INSERT INTO public.entry OVERRIDING SYSTEM VALUE VALUES (10, '79fd5e62-7a33-4e6d-1aa4-4eedef1727ea', 1777658408918, 'UTC', 'xback\\slash \\u0000 \\né é 中文''single'' "double" `back`', 'after', '\udc00 the other half🎷 whole"; DROP TABLE entry; --', 'not-trustworthy', -2820.0785892560098, 48000, 1e-07, NULL, NULL, 0, '168cfe3b069fc2d3a9c420c4bb2aed82582dccf6dec324148a2a2baa67b4af22', '69e43840c2ec4391b823a17ed54467e1', 10, '0eac24ce86e3862092ef74fa3ab9654f734e9867b335bcab278c979756c9fa3c', 1777658520125);
INSERT INTO public.entry OVERRIDING SYSTEM VALUE VALUES (11, 'adb19fad-f862-4864-00b3-029e6e41c9e7', 1777658409895, '+05:45', 'x🎷 wholeé é 中文', 'before', NULL, 'not-trustworthy', NULL, NULL, NULL, NULL, 'not-judged', 20700, '42d5c278fbf390684a744d8523a3df6f4b42e3e90cd24fbb539b615513e9d75e', '69e43840c2ec4391b823a17ed54467e1', 11, '4c295b4f703dd502c9c86b71f9e5992abee930d8c2c739c408de441709e2e301', 1777658520125);
INSERT INTO public.entry OVERRIDING SYSTEM VALUE VALUES (12, '3df0a425-8fc8-2935-7336-0061b4da39b6', 1777658410872, '+05:45', 'x', 'after', NULL, 'not-trustworthy', -5360.29649655913, 48000, 1e-07, NULL, 'good', 20700, '3ba5f40b15d2437ae15646b7dfb8a41c83abdf22bfdc0c875d06af1e68ceae4f', '69e43840c2ec4391b823a17ed54467e1', 12, 'b503ba079296a9bb375dae93b175678a89e0a9fcd5bed0ee36f93ceb32dd540d', 1777658520125);
INSERT INTO public.entry OVERRIDING SYSTEM VALUE VALUES (13, '908560c8-eb68-75b0-4085-533abdd8f693', 1777658411849, 'UTC', 'xa‮b‏', 'before', NULL, 'not-trustworthy', 20562.61692352679, 48000, 1e-07, NULL, 'undecided', 0, 'ef4f07a068e93a95aac5cfb0a747815b68636c57356a0f184b6b5265c3b68c24', '69e43840c2ec4391b823a17ed54467e1', 13, 'ee256d32e29819c5117f04f166dbd00e3b0262514f311e3c73ce6020aa8be606', 1777658520125);
INSERT INTO public.entry OVERRIDING SYSTEM VALUE VALUES (14, 'aa59d79d-bd27-8e5d-87d3-7aac929bbbf6', 1777658412826, '+05:45', 'x', 'during', 'é é 中文', 'not-trustworthy', NULL, NULL, NULL, NULL, 'bad', 20700, '374a6a49b8462f1e674d50644180e3cb073a51c5423aa2a2719cfc0898544709', '69e43840c2ec4391b823a17ed54467e1', 14, '4ecceb0b5f9d1dfbf7fc9083d381bde0588650efceed083bc263a0e781b2f09e', 1777658520125);
INSERT INTO public.entry OVERRIDING SYSTEM VALUE VALUES (15, 'edaf6a9f-3fca-db0a-07cf-6eafd30e5099', 1777658413803, '+05:45', 'x', 'after', NULL, 'not-trustworthy', -5996.9738658949, 48000, 1e-07, NULL, NULL, 20700, 'ff4910c79530e152eb1121ef3419d9538c21078a2c49372e969230f87e27ca65', '69e43840c2ec4391b823a17ed54467e1', 15, '9193fb0a7d109e5ea584b82272a8d71f70cccc32b6d13765ce02d4e76dee5e3a', 1777658520125);
INSERT INTO public.entry OVERRIDING SYSTEM VALUE VALUES (16, 'bfff0cce-0d22-ddae-2489-f12c886a6874', 1777658414780, 'UTC', 'x', 'during', '=1+1', 'not-trustworthy', -12099.79829227504, 48000, 1e-07, NULL, 'not-judged', 0, '17ddf12ac055d5d1124b0d87b4500b6640156db633e1209aee7c2e3b12f9197e', '69e43840c2ec4391b823a17ed54467e1', 16, '083cbbc5724abe1a95de4f39ceaa94410d203b25f57298d0e6a8061bf9210123', 1777658520125);
INSERT INTO public.entry OVERRIDING SYSTEM VALUE VALUES (17, '3a62209c-3fcf-0186-4231-74f8a22e843f', 1777658415757, '+05:45', 'x\u0000	
[31m<script>alert(''x'')</script>', 'after', NULL, 'not-trustworthy', 430.005931368424, 48000, 1e-07, NULL, 'good', 20700, '1c118743d751ae9d940e0c78278af41c5bb8a758c916f3709b2f7540b969a9f1', '69e43840c2ec4391b823a17ed54467e1', 17, 'e19ba4a475a92257179653d7a1125eda3b081b232c56aca4aa0634205dc98cd0', 1777658520125);
INSERT INTO public.entry OVERRIDING SYSTEM VALUE VALUES (18, '09736869-fc72-7113-32a0-375a8c0c08b2', 1777658416734, '+05:45', 'x=1+1🎷 wholeé é 中文', 'before', '=1+1half \ud83d a pair', 'not-trustworthy', 1492.5871139099786, 48000, 1e-07, NULL, 'undecided', 20700, '05552400af95bdd9004a781a09eab3f30ef5f612746c2b95e10b206247051505', '69e43840c2ec4391b823a17ed54467e1', 18, '606684a04cf9ea9c1be22754b6d25bc8457c0ed1f01dd024761e66a3b57db1d1', 1777658520125);
INSERT INTO public.entry OVERRIDING SYSTEM VALUE VALUES (19, '8753aa3a-a3e9-1bc5-d4e0-6692e7b4d4d3', 1777658417711, 'UTC', 'xhalf \ud83d a pair', 'after', NULL, 'not-trustworthy', -251.96835280535996, 48000, 1e-07, NULL, 'bad', 0, 'de0995c55a96b062534b664bd6024796c57da088f1f9ccdf89fb3ff08671fdb6', '69e43840c2ec4391b823a17ed54467e1', 19, 'ffb3209a0968a284d6c0c58f15c000c4ec29d93ec607bb4ac2766fce5a00ff5b', 1777658520125);
INSERT INTO public.entry OVERRIDING SYSTEM VALUE VALUES (20, '2313e14a-0754-f1e2-783a-efa09b0c4ef3', 1777658418688, 'UTC', 'xhalf \ud83d a pairback\\slash \\u0000 \\n', 'during', NULL, 'not-trustworthy', NULL, NULL, NULL, NULL, NULL, 0, 'dd47903cba423488fd9f6cdfa1ec8592b62a905cc4921ada6f3e12d4729750db', '69e43840c2ec4391b823a17ed54467e1', 20, '9880c5ead97aca521d0c19003afc540d993278bb3d06a25e50c797a0e2e53824', 1777658520125);
INSERT INTO public.entry OVERRIDING SYSTEM VALUE VALUES (21, '7996af88-c8ff-f922-5fa0-48438ae81274', 1777658419665, 'UTC', 'x', 'after', '<script>alert(''x'')</script>line
one	tab', 'not-trustworthy', NULL, NULL, NULL, NULL, 'not-judged', 0, 'ff2277255c76b3ead5124c0d4cf6397d57a4c9cebca59dcdec6a58479542eed2', '69e43840c2ec4391b823a17ed54467e1', 21, '2d0eaad84c92d382caa3b87981e8feac41de6c6e02bcdb8128ebfb1a6266e96d', 1777658520125);
INSERT INTO public.entry OVERRIDING SYSTEM VALUE VALUES (22, '7f9a8971-0968-0b9c-ec35-2a468bcd646c', 1777658420642, 'UTC', 'x''single'' "double" `back`', 'during', NULL, 'not-trustworthy', NULL, NULL, NULL, NULL, 'good', 0, '483db33cb214d3e7f15b8f3730485d59b7b0a37576830013fa71a63eb6a4fe22', '69e43840c2ec4391b823a17ed54467e1', 22, '9822ba2398418fe586ac4038e0bd4099dd629a360f6fc0f58bc4712014597c11', 1777658520125);
INSERT INTO public.entry OVERRIDING SYSTEM VALUE VALUES (23, '531189a3-6e51-20d3-5e77-e3c2e565caba', 1777658421619, '+05:45', 'x', 'before', NULL, 'not-trustworthy', NULL, NULL, NULL, NULL, 'undecided', 20700, 'da40813075b0a2a4b85da8ae763fc4fe647133bff3934f839e7357c398c1567c', '69e43840c2ec4391b823a17ed54467e1', 23, 'f11a9bedcda74fb09dd3a237e47c001008f2e9eb6f094529c84c21842cad9c61', 1777658520125);
INSERT INTO public.entry OVERRIDING SYSTEM VALUE VALUES (24, 'dac8c66c-2448-3991-926c-b2ba701fc323', 1777658422596, '+05:45', 'x', 'during', '''single'' "double" `back`\u0000	
[31m', 'not-trustworthy', NULL, NULL, NULL, NULL, 'bad', 20700, '09d8e8d7d2b789ac21534c64fa2fe7ef44ae829c623a02fc8bda57a331ad47d0', '69e43840c2ec4391b823a17ed54467e1', 24, '6767a58492c10d53c46fa48a066652a610f70667b7a6db88232a99f05b72b0bc', 1777658520125);


--
-- Data for Name: journal_version; Type: TABLE DATA; Schema: public; Owner: -
--

INSERT INTO public.journal_version VALUES (1, '1', 'entries', 'SQL', 'V1__entries.sql', 2141037340, 'loopgauge', '2026-11-29 14:04:40.480934', 34, true);
INSERT INTO public.journal_version VALUES (2, '2', 'standing', 'SQL', 'V2__standing.sql', -1735822519, 'loopgauge', '2026-11-29 14:04:40.535655', 4, true);
INSERT INTO public.journal_version VALUES (3, '3', 'keeping', 'SQL', 'V3__keeping.sql', -46281550, 'loopgauge', '2026-11-29 14:04:40.555615', 24, true);


--
-- Data for Name: own_origin; Type: TABLE DATA; Schema: public; Owner: -
--

INSERT INTO public.own_origin VALUES ('69e43840c2ec4391b823a17ed54467e1', 24, '6767a58492c10d53c46fa48a066652a610f70667b7a6db88232a99f05b72b0bc', 1777658520125, 0);


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
-- Name: entry_by_order; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX entry_by_order ON public.entry USING btree (order_ms, number, "position");


--
-- Name: entry_by_path; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX entry_by_path ON public.entry USING btree (path, order_ms, number, "position");


--
-- Name: entry_by_show; Type: INDEX; Schema: public; Owner: -
--

CREATE INDEX entry_by_show ON public.entry USING btree (show_name, order_ms, number, "position");


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

\unrestrict R524a0Pqgw0JD7v0SksFLiWwmEMmznLLkYeuvnFJ7kM6sY1VUv24INML1g6xW86

