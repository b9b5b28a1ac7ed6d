-- The sheet of today and each home ask for the sources of enquiries; without this every such look read all sources of all
-- shops.
create index live_source_of_enquiry on live_source (enquiry_id);
