"""What is handed out: answers, tables, studies, the command line."""
